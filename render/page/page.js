(function () {
  "use strict";
  var sections = Array.prototype.slice.call(document.querySelectorAll("main > section"));
  var tabs = Array.prototype.slice.call(document.querySelectorAll("nav a"));
  function show() {
    var wanted = location.hash.slice(1);
    var found = sections.some(function (s) { return s.id === wanted; });
    sections.forEach(function (s, i) { s.hidden = found ? s.id !== wanted : i !== 0; });
    tabs.forEach(function (a, i) {
      if (sections[i].hidden) { a.removeAttribute("aria-current"); } else { a.setAttribute("aria-current", "page"); }
    });
  }
  window.addEventListener("hashchange", show);
  show();
  var layers = document.querySelector(".layers");
  layers.hidden = false;
  layers.addEventListener("change", function (event) {
    var name = event.target.getAttribute("data-switch");
    document.querySelectorAll('g[data-layer="' + name + '"]').forEach(function (g) {
      if (event.target.checked) { g.removeAttribute("display"); } else { g.setAttribute("display", "none"); }
    });
  });
})();
