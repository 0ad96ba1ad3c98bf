// Says what a day of a season is where it is pointed at, tapped or reached with the arrow keys. Without scripts each day is a link.
"use strict";

for (const strip of document.querySelectorAll("[data-season]")) {
  const said = document.getElementById(strip.dataset.season);
  const lanes = [...strip.querySelectorAll(".links")].map(lane => [...lane.querySelectorAll("a")]);
  let chosen = null;

  function choose(day) {
    chosen?.classList.remove("chosen");
    chosen = day;
    day.classList.add("chosen");
    const link = document.createElement("a");
    link.href = day.getAttribute("href");
    link.textContent = "Its reasons";
    const work = day.closest("[data-work]")?.dataset.work;
    said.replaceChildren(`${work ? `${work}. ` : ""}${day.querySelector("title").textContent}. `, link);
  }

  strip.addEventListener("pointerover", event => {
    const day = event.target.closest(".links a");
    if (day && event.pointerType === "mouse") choose(day);
  });
  // A finger has no pointer to hold over a day: the first tap says it, the second opens it.
  strip.addEventListener("click", event => {
    const day = event.target.closest(".links a");
    if (day && day !== chosen) {
      event.preventDefault();
      choose(day);
    }
  });
  strip.addEventListener("keydown", event => {
    const step = { ArrowLeft: [0, -1], ArrowRight: [0, 1], ArrowUp: [-1, 0], ArrowDown: [1, 0] }[event.key];
    if (!step || lanes.length === 0 || (step[0] && lanes.length === 1)) return;
    event.preventDefault();
    const lane = Math.max(0, lanes.findIndex(days => days.includes(chosen)));
    const at = chosen ? lanes[lane].indexOf(chosen) : Number(strip.dataset.today ?? 0) - step[1];
    const next = lanes[Math.min(Math.max(lane + step[0], 0), lanes.length - 1)];
    choose(next[Math.min(Math.max(at + step[1], 0), next.length - 1)]);
    chosen.querySelector("rect").scrollIntoView({ block: "nearest", inline: "nearest" });
  });
}

// On paper nothing can be opened.
addEventListener("beforeprint", () => document.querySelectorAll("details").forEach(details => details.open = true));
