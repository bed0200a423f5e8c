// Words, days and times. The words come with the page; days and times are the farm's.
const chuteWords = (() => {
  const all = JSON.parse(document.getElementById("words").textContent);
  // Days as the farm's other pages write them: the day before the month.
  const language = document.documentElement.lang === "en" ? "en-GB" : document.documentElement.lang;
  const dayForm = new Intl.DateTimeFormat(language, { weekday: "short", day: "numeric", month: "short", timeZone: "UTC" });

  const say = (key, ...values) => (all[key] ?? key).replace(/\{(\d)\}/g, (_, place) => values[place] ?? "");
  const count = (key, number) => say(`${key}.${number === 1 ? "one" : "other"}`, number);
  // A day is written yyyy-mm-dd, as on the wire.
  const day = date => dayForm.format(new Date(`${date}T00:00:00Z`));
  const addDays = (date, days) => new Date(Date.parse(`${date}T00:00:00Z`) + days * 86_400_000).toISOString().slice(0, 10);
  const dayOf = (instant, zone) => {
    const parts = new Intl.DateTimeFormat("en-CA", { year: "numeric", month: "2-digit", day: "2-digit", timeZone: zone }).formatToParts(new Date(instant));
    const part = type => parts.find(p => p.type === type).value;
    return `${part("year")}-${part("month")}-${part("day")}`;
  };
  const time = (instant, zone) => new Intl.DateTimeFormat(language, { hour: "2-digit", minute: "2-digit", hourCycle: "h23", timeZone: zone }).format(new Date(instant));
  const lower = text => text.charAt(0).toLocaleLowerCase(language) + text.slice(1);

  return { say, count, day, addDays, dayOf, time, inSentence: language === "de" ? text => text : lower };
})();
