// What is unsafe in a finding, and what follows from it: the farm's own rules, told at once, also where the farm cannot be reached.
// The farm judges every finding again when it arrives.
const chuteRules = (() => {
  const treatments = ["trimmed", "loose-horn-removed", "foreign-body-removed", "corium-exposed", "dressing", "wrap", "block", "pain-relief", "antibiotic"];
  const has = (finding, action) => finding.actions.includes(action);
  const notSore = ["ClawShape", "Skin"];

  // others: findings of the same cow and foot from this turn; worn: the claw that wears a block from before, undefined for none.
  function unsafeBlock(finding, others, worn, siteOf) {
    if (!has(finding, "block")) return null;
    const together = [...others, finding];
    const isSore = (f, claw) => (f.claw === claw || f.claw === "both") && f.lesion !== "none" && !notSore.includes(siteOf(f.lesion));
    const sore = claw => together.some(f => isSore(f, claw));
    if (together.some(f => f.signs.includes("both-claws-sore")) || (sore("inner") && sore("outer"))) return { key: "warn.bothSore" };
    if (sore(finding.blockClaw)) return { key: "warn.soreClaw", claw: finding.blockClaw };
    if (worn && worn !== finding.blockClaw && !together.some(f => has(f, "block-off") || has(f, "block-lost"))) return { key: "warn.worn", claw: worn };
    return null;
  }

  const needsWithdrawal = finding => !finding.withdrawalUntil && (has(finding, "pain-relief") || has(finding, "antibiotic"));

  // Which follow-ups start, in the order in which they fall due; each names a span of days the farm sends along.
  function followUps(finding, isUnsafe) {
    const all = [];
    if (has(finding, "block") && isUnsafe) all.push("unsafeBlock");
    if (has(finding, "wrap")) all.push("wrapOff");
    if (has(finding, "block")) all.push("blockCheck");
    if (has(finding, "loose-horn-removed") || has(finding, "corium-exposed")) all.push("softHorn");
    if (has(finding, "block")) all.push("blockOff");
    if (finding.lesion !== "none" && treatments.some(action => has(finding, action))) all.push("outcome");
    return all;
  }

  return { unsafeBlock, needsWithdrawal, followUps };
})();
