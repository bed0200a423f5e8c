// What is being entered of one foot, and the finding it makes.
const chuteDraft = (() => {
  const order = ["trimmed", "loose-horn-removed", "foreign-body-removed", "corium-exposed", "dressing", "wrap", "wrap-off", "block", "block-off", "block-lost", "pain-relief", "antibiotic", "refer-to-vet"];

  // Hind lesions lie mostly on the outer claw, those in front mostly on the inner one. Common practice, no source: proposed, one tap changes it.
  const usualClaw = foot => foot.endsWith("h") ? "outer" : "inner";
  const other = claw => claw === "inner" ? "outer" : "inner";
  // Seen from behind the outer claw of a left foot is on the left.
  const sideOf = (foot, claw) => (foot.startsWith("l") === (claw === "outer")) ? "left" : "right";
  const clawAt = (foot, side) => sideOf(foot, "outer") === side ? "outer" : "inner";

  const begin = (foot, lesion) => ({
    foot, lesion: lesion.code,
    claw: lesion.claw && lesion.site !== "ClawShape" ? usualClaw(foot) : null,
    zone: lesion.zone, isZoneProposed: lesion.zone !== null,
    severity: null, mStage: null, bodyKind: null, bodySize: null,
    actions: lesion.code === "none" ? [] : ["trimmed"], blockClaw: null, blockMaterial: null, withdrawalUntil: null, signs: [],
  });

  const toFinding = (draft, at, more) => ({
    id: newId(), at, foot: draft.foot, claw: draft.claw, zone: draft.zone, lesion: draft.lesion, severity: draft.severity, mStage: draft.mStage,
    signs: draft.signs, actions: order.filter(action => draft.actions.includes(action)),
    blockClaw: draft.blockClaw, blockMaterial: draft.blockClaw ? draft.blockMaterial : null,
    foreignBody: draft.bodyKind ? { kind: draft.bodyKind, sizeMillimetres: draft.bodySize } : null,
    withdrawalUntil: draft.withdrawalUntil, locomotionScore: more.locomotionScore, by: more.by, note: "",
  });

  const trimmed = (foot, at, more) =>
    toFinding({ foot, claw: null, zone: null, lesion: "none", severity: null, mStage: null, signs: [], actions: ["trimmed"], blockClaw: null, blockMaterial: null, bodyKind: null, bodySize: null, withdrawalUntil: null }, at, more);

  // randomUUID is there over HTTPS only; the farm's own network may be plain.
  function newId() {
    if (crypto.randomUUID) return crypto.randomUUID();
    return [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, "0")).join("");
  }

  function toggleAction(draft, action) {
    const isOn = draft.actions.includes(action);
    draft.actions = isOn ? draft.actions.filter(a => a !== action) : [...draft.actions, action];
    // A block was either taken off or had come off by itself.
    if (!isOn && action === "block-off") draft.actions = draft.actions.filter(a => a !== "block-lost");
    if (!isOn && action === "block-lost") draft.actions = draft.actions.filter(a => a !== "block-off");
    if (!draft.actions.includes("pain-relief") && !draft.actions.includes("antibiotic")) draft.withdrawalUntil = null;
  }

  function toggleBlock(draft, claw) {
    draft.blockClaw = draft.blockClaw === claw ? null : claw;
    draft.actions = draft.actions.filter(a => a !== "block");
    if (draft.blockClaw) draft.actions.push("block");
  }

  const toggleSign = (draft, sign) => { draft.signs = draft.signs.includes(sign) ? draft.signs.filter(s => s !== sign) : [...draft.signs, sign]; };

  return { begin, toFinding, trimmed, toggleAction, toggleBlock, toggleSign, sideOf, clawAt, other, newId };
})();
