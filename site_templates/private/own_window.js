// Inside another page's frame nothing is asked for: whoever made that page could lay something over the field, or lead a
// hand to it. A page that lies open on a host cannot forbid frames by itself, so it looks before anything else.
if (self !== top) {
  const told = document.getElementById("told");
  document.getElementById("words-form").remove();
  document.documentElement.dataset.state = "refused";
  told.className = "act";
  told.textContent = given.words.framed;
  return;
}
