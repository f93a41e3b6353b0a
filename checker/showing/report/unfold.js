// Only for browsers whose style sheets cannot unfold what is printed.
addEventListener("beforeprint", () => {
  for (const one of document.querySelectorAll("details:not([open])")) {
    one.open = true;
    one.dataset.folded = "";
  }
});
addEventListener("afterprint", () => {
  for (const one of document.querySelectorAll("details[data-folded]")) {
    one.open = false;
    delete one.dataset.folded;
  }
});
