"use strict";

// A form that takes long says that it is at work, and how far on it is by the usual time. Without scripts the browser shows that it waits.
for (const form of document.querySelectorAll("form[data-long]")) {
  const [usual, work] = [Number(form.dataset.long), form.dataset.work];
  const said = document.createElement("p");
  const bar = Object.assign(document.createElement("progress"), { max: usual });
  let ticking = null;
  said.className = "busy";
  said.setAttribute("role", "status");
  bar.setAttribute("aria-label", work);

  form.addEventListener("submit", () => {
    const since = Date.now();
    const show = () => {
      const seconds = Math.round((Date.now() - since) / 1000);
      bar.value = Math.min(seconds, usual);
      said.replaceChildren(bar, ` ${work}: ${seconds} of about ${usual} seconds`);
    };
    show();
    form.append(said);
    ticking = setInterval(show, 1000);
    // Later, so that the pressed button is still sent.
    setTimeout(() => form.querySelectorAll("button").forEach(button => button.disabled = true));
  });

  // A page that is gone back to is as it was.
  addEventListener("pageshow", () => {
    clearInterval(ticking);
    said.remove();
    form.querySelectorAll("button").forEach(button => button.disabled = false);
  });
}
