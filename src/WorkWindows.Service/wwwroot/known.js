"use strict";

// A page that was kept on the phone, or left open, says that nobody has asked since.
(() => {
  const known = document.getElementById("known");
  const freshMs = 120000;
  const tell = () => {
    if (Date.now() - Date.parse(known.dataset.knownAt) > freshMs)
      known.querySelector("span").hidden = false;
  };
  if (!known)
    return;
  tell();
  setInterval(tell, 30000);
})();
