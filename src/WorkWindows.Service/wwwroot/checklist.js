"use strict";

// Keeps ticks and signatures on the phone until the server has them. A signature is only ever sent while whoever signed
// it is the reader of the page; the server refuses it for anybody else. One that is refused for good stays until its
// signer tries it again, drops it, or signs the same list anew.
(() => {
  const phone = document.getElementById("phone");
  if (!phone)
    return;
  const { person, personName, task, title, day, version, address } = phone.dataset;
  const form = document.getElementById("acknowledge");
  const lines = form ? [...form.querySelectorAll("li[data-id]")] : [];
  const draftKey = `ww-draft:${person}:${task}:${day}`;
  const signedPrefix = "ww-signed:";
  const retryMs = 30000;
  const said = { sent: "", trouble: [], changed: [] };
  let sending = false;
  let retry = 0;

  const clockOffMs = 86400000;
  const dateForm = { weekday: "short", day: "numeric", month: "short", year: "numeric" };

  const time = () => new Date().toTimeString().slice(0, 5);
  // As the pages write a day, such as Tue 3 Feb 2026.
  const dayWords = date => date.toLocaleDateString("en-GB", dateForm).replace(",", "");
  const box = line => line.querySelector("input[type=checkbox]");
  const read = key => JSON.parse(localStorage.getItem(key) ?? "null");
  const signed = () => Object.keys(localStorage).filter(key => key.startsWith(signedPrefix))
    .map(key => [key, read(key)]).filter(([, entry]) => entry);
  const isOwn = entry => entry.person === person;
  const isHere = entry => isOwn(entry) && entry.task === task && entry.day === day;

  function keep(key, value) {
    try {
      localStorage.setItem(key, JSON.stringify(value));
      return true;
    } catch {
      said.trouble = ["This phone keeps nothing. Stay on this page until it says that it was sent."];
      return false;
    }
  }

  function saveDraft() {
    const shown = {};
    const said = {};
    const ticked = [];
    for (const line of lines) {
      shown[line.dataset.id] = line.dataset.text;
      said[line.dataset.id] = line.dataset.said;
      if (box(line).checked)
        ticked.push(line.dataset.id);
    }
    if (keep(draftKey, { version, shown, said, ticked, name: form.elements.name.value }))
      tell();
  }

  // Ticks of lines that still say the same; what differs is told.
  function restoreDraft() {
    const draft = read(draftKey);
    if (!draft)
      return;
    const now = {};
    const before = id => draft.said?.[id] ?? draft.shown[id];
    for (const line of lines) {
      const { id, text, said: words } = line.dataset;
      now[id] = text;
      if (draft.shown[id] === text && draft.ticked.includes(id))
        box(line).checked = true;
      else if (draft.version !== version && draft.shown[id] !== text)
        said.changed.push(draft.shown[id] ? `Changed: ${words} Before: ${before(id)}` : `New: ${words}`);
    }
    if (draft.version !== version)
      said.changed.push(...Object.keys(draft.shown).filter(id => !now[id]).map(id => `Gone: ${before(id)}`));
    form.elements.name.value ||= draft.name;
  }

  function tell() {
    const kept = signed();
    const own = kept.filter(([, entry]) => isOwn(entry));
    const waiting = own.filter(([, entry]) => !entry.refused);
    const texts = [...said.trouble];
    if (said.sent)
      texts.push(said.sent);
    for (const [, entry] of waiting)
      texts.push(`${place(entry)}Signed ${entry.at}. Kept on this phone, not sent yet.`);
    for (const name of new Set(kept.filter(([, entry]) => !isOwn(entry)).map(([, entry]) => entry.personName)))
      texts.push(`A signature of ${name} is kept on this phone. It is sent when ${name} signs in.`);
    const refused = own.filter(([, entry]) => entry.refused);
    if (!texts.length && !refused.length && lines.some(line => box(line).checked))
      texts.push("Your ticks are kept on this phone. Not signed yet.");
    if (said.changed.length)
      texts.push("The list has changed since you read it. Read what is new:");
    phone.replaceChildren(
      ...refused.map(([key, entry]) => refusal(key, entry)), ...texts.map(text => element("p", text)),
      ...said.changed.map(text => element("p", text)));
    if (form)
      form.querySelector("button").disabled = waiting.some(([, entry]) => isHere(entry)) || said.sent !== "";
    clearTimeout(retry);
    if (waiting.length)
      retry = setTimeout(send, retryMs);
  }

  // Which list it is of, where that is another one than the page's.
  const place = entry => isHere(entry) ? "" : `${entry.title}, ${dayWords(new Date(`${entry.day}T12:00`))}: `;

  // What was not taken, why, and what its signer can do about it.
  function refusal(key, entry) {
    const { why, what } = entry.refused;
    const made = document.createElement("div");
    made.className = "refused";
    const signedOn = dayWords(new Date(entry.body.signedAt));
    made.append(
      element("p", `${place(entry)}NOT SIGNED. What you signed on ${signedOn} at ${entry.at} was not taken. ${why}`),
      element("p", `${what} What you signed stays on this phone until you drop it.`));
    if (!isHere(entry)) {
      const list = element("a", "Open its checklist");
      list.href = `/tasks/${entry.task}/checklist?date=${entry.day}`;
      made.append(list);
    }
    made.append(button("Try again", () => tryAgain(key, entry)), button("Drop it", () => drop(key)));
    return made;
  }

  function button(text, press) {
    const made = element("button", text);
    made.type = "button";
    made.className = "second";
    made.addEventListener("click", press);
    return made;
  }

  function tryAgain(key, entry) {
    // Whoever presses it signs now: what the clock said then is of no use.
    const { refused, ...again } = entry;
    if (refused.isOfTheClock)
      again.body = { ...entry.body, signedAt: new Date().toISOString() };
    if (keep(key, again)) {
      tell();
      send();
    }
  }

  function drop(key) {
    if (confirm("Drop this signature? Nobody but this phone has it.")) {
      localStorage.removeItem(key);
      tell();
    }
  }

  function element(name, text) {
    const made = document.createElement(name);
    made.textContent = text;
    return made;
  }

  // Also where the page is not reached by https, and the browser makes no ids.
  function newKey() {
    const hex = [...crypto.getRandomValues(new Uint8Array(16))].map(byte => byte.toString(16).padStart(2, "0")).join("");
    return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join("-");
  }

  function sign(event) {
    event.preventDefault();
    const key = newKey();
    const entry = {
      person, personName, task, title, day, address, at: time(),
      body: {
        key, personId: person, version,
        items: lines.filter(line => box(line).checked).map(line => ({ id: line.dataset.id, text: line.dataset.text })),
        name: form.elements.name.value, signedAt: new Date().toISOString(),
        insteadBecause: form.elements.instead?.value.trim() || null,
      },
    };
    said.trouble = [];
    // What cannot be kept is sent as the plain form that the page is.
    if (!keep(signedPrefix + key, entry)) {
      form.submit();
      return;
    }
    tell();
    // The button is at the end of a long list, and what became of the signature stands above it.
    phone.scrollIntoView({ block: "center" });
    send();
  }

  // Whether to go on with the next one.
  async function sendOne(key, entry) {
    let answer;
    try {
      answer = await fetch(entry.address, {
        method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(entry.body),
      });
    } catch {
      return false;
    }
    if (answer.ok) {
      const { release } = await answer.json();
      localStorage.removeItem(key);
      localStorage.removeItem(`ww-draft:${person}:${entry.task}:${entry.day}`);
      // An earlier one of the same list, which was refused, is of no use any more.
      for (const [other, { refused, person: by, task: of, day: on }] of signed()) {
        if (refused && by === person && of === entry.task && on === entry.day)
          localStorage.removeItem(other);
      }
      if (isHere(entry)) {
        said.sent = `Sent ${time()}.`;
        said.changed = [];
        show(release);
      }
      return true;
    }
    const problem = await answer.json().catch(() => ({}));
    if (answer.status === 401 || answer.status === 403) {
      said.trouble = [`Not sent: ${problem.detail ?? `sign in as ${entry.personName}, and it is sent.`}`];
      return false;
    }
    if (answer.status >= 500 || answer.status === 408 || answer.status === 429)
      return false;
    keep(key, { ...entry, refused: reasonOf(answer, problem) });
    if (problem.changes && isHere(entry)) {
      location.reload();
      return false;
    }
    return true;
  }

  // In plain words: what a program is answered with says how to write a time for programs.
  function reasonOf(answer, problem) {
    if (answer.status === 404) {
      return {
        why: "The task is not there any more, or not shown to you any more.",
        what: "Ask your office. If the task is there again, try again.",
      };
    }
    if (problem.changes) {
      return {
        why: "The list had changed by the time that it was sent.",
        what: "Read what is new on the list, tick it, and sign again.",
      };
    }
    if (problem.errors?.signedAt) {
      const isClockOff = Math.abs(new Date(answer.headers.get("Date")) - Date.now()) > clockOffMs;
      return isClockOff
        ? {
          why: `The clock of this phone is wrong: it says ${dayWords(new Date())}.`,
          what: "Set the phone's date and time, and try again: it is signed as of then.", isOfTheClock: true,
        }
        : {
          why: "It was signed more than two days ago, and such an old signature is not taken.",
          what: "If the work still goes on, try again: it is signed as of then.", isOfTheClock: true,
        };
    }
    const reasons = problem.errors ? Object.values(problem.errors).flat().join(" ") : problem.detail ?? "";
    return { why: reasons, what: "Open the checklist and sign again, or try again." };
  }

  function show(release) {
    const shown = document.getElementById("release");
    shown.textContent = release.statement;
    shown.className = `release ${release.state === "released" ? "released" : "held"}`;
  }

  async function send() {
    if (sending)
      return;
    sending = true;
    try {
      for (const [key, entry] of signed()) {
        if (isOwn(entry) && !entry.refused && !await sendOne(key, entry))
          break;
      }
    } finally {
      sending = false;
      tell();
    }
  }

  // The worker keeps what passes it: this page passes it once more when it was opened before there was one.
  async function keepPage() {
    const { serviceWorker } = navigator;
    await serviceWorker.register("/offline.js");
    if (!serviceWorker.controller)
      await new Promise(done => serviceWorker.addEventListener("controllerchange", done, { once: true }));
    const parts = [...document.querySelectorAll("link[rel=stylesheet], link[rel=icon], script[src]")];
    await Promise.all([location.href, ...parts.map(part => part.href ?? part.src)].map(url => fetch(url)));
    phone.dataset.kept = "true";
  }

  if (form) {
    restoreDraft();
    form.addEventListener("change", saveDraft);
    form.addEventListener("submit", sign);
  }
  tell();
  addEventListener("online", send);
  addEventListener("pageshow", send);
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && send());
  if (task && "serviceWorker" in navigator)
    keepPage().catch(() => {});
})();
