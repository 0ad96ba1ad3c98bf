"use strict";

// Keeps ticks and signatures on the phone until the server has them. A signature is only ever sent while whoever signed
// it is the reader of the page; the server refuses it for anybody else.
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

  const time = () => new Date().toTimeString().slice(0, 5);
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
    const ticked = [];
    for (const line of lines) {
      shown[line.dataset.id] = line.dataset.text;
      if (box(line).checked)
        ticked.push(line.dataset.id);
    }
    if (keep(draftKey, { version, shown, ticked, name: form.elements.name.value }))
      tell();
  }

  // Ticks of lines that still say the same; what differs is told.
  function restoreDraft() {
    const draft = read(draftKey);
    if (!draft)
      return;
    const now = {};
    for (const line of lines) {
      const { id, text } = line.dataset;
      now[id] = text;
      if (draft.shown[id] === text && draft.ticked.includes(id))
        box(line).checked = true;
      else if (draft.version !== version && draft.shown[id] !== text)
        said.changed.push(draft.shown[id] ? `Changed: ${text} Before: ${draft.shown[id]}` : `New: ${text}`);
    }
    if (draft.version !== version)
      said.changed.push(...Object.keys(draft.shown).filter(id => !now[id]).map(id => `Gone: ${draft.shown[id]}`));
    form.elements.name.value ||= draft.name;
  }

  function tell() {
    const waiting = signed();
    const own = waiting.filter(([, entry]) => isOwn(entry));
    const texts = [...said.trouble];
    if (said.sent)
      texts.push(said.sent);
    for (const [, entry] of own)
      texts.push(`${isHere(entry) ? "" : `${entry.title}, ${entry.day}: `}Signed ${entry.at}. Kept on this phone, not sent yet.`);
    for (const name of new Set(waiting.filter(([, entry]) => !isOwn(entry)).map(([, entry]) => entry.personName)))
      texts.push(`A signature of ${name} is kept on this phone. It is sent when ${name} signs in.`);
    if (!texts.length && lines.some(line => box(line).checked))
      texts.push("Your ticks are kept on this phone. Not signed yet.");
    if (said.changed.length)
      texts.push("The list has changed since you read it. Read what is new:");
    phone.replaceChildren(...texts.map(text => element("p", text)), ...said.changed.map(text => element("p", text)));
    if (form)
      form.querySelector("button").disabled = own.some(([, entry]) => isHere(entry)) || said.sent !== "";
    clearTimeout(retry);
    if (own.length)
      retry = setTimeout(send, retryMs);
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
      if (isHere(entry)) {
        said.sent = `Sent ${time()}.`;
        said.changed = [];
        show(release);
      }
      return true;
    }
    const problem = await answer.json().catch(() => ({}));
    if (answer.status === 401 || answer.status === 403) {
      said.trouble = [`Not sent: ${problem.detail ?? `sign in as ${personName}, and it is sent.`}`];
      return false;
    }
    if (answer.status >= 500 || answer.status === 408 || answer.status === 429)
      return false;
    localStorage.removeItem(key);
    if (problem.changes && isHere(entry)) {
      location.reload();
      return false;
    }
    const reasons = problem.errors ? Object.values(problem.errors).flat().join(" ") : problem.detail ?? "";
    said.trouble = [`${entry.title}, ${entry.day}: not signed. ${reasons} Open its checklist and sign again.`];
    return true;
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
        if (isOwn(entry) && !await sendOne(key, entry))
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
  if ("serviceWorker" in navigator)
    keepPage().catch(() => {});
})();
