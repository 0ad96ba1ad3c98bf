"use strict";

// Dragging a card fills in and sends the form that the card has for those who do not drag.
let dragged = null;

for (const card of document.querySelectorAll("[draggable=true]")) {
  card.addEventListener("dragstart", event => {
    dragged = card;
    event.dataTransfer.effectAllowed = "move";
    event.dataTransfer.setData("text/plain", card.querySelector("h3").textContent.trim());
  });
  card.addEventListener("dragend", () => dragged = null);
}

for (const cell of document.querySelectorAll("td[data-crew]")) {
  cell.addEventListener("dragover", event => {
    if (!dragged)
      return;
    event.preventDefault();
    cell.classList.add("over");
  });
  cell.addEventListener("dragleave", () => cell.classList.remove("over"));
  cell.addEventListener("drop", event => {
    event.preventDefault();
    cell.classList.remove("over");
    const form = dragged?.querySelector("form");
    if (!form || dragged.parentElement === cell)
      return;
    form.elements.day.value = cell.dataset.day;
    form.elements.to.value = cell.dataset.crew;
    form.requestSubmit();
  });
}
