// A part that refreshes itself leaves people alone while they are in it: no refresh while it holds the focus or an open
// table.
document.addEventListener("htmx:beforeRequest", (event) => {
  const part = event.target;
  if (part instanceof Element && part.hasAttribute("data-live")
      && (part.contains(document.activeElement) || part.querySelector("details[open]"))) {
    event.preventDefault();
  }
});
