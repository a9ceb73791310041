/** Looks like the workbench, with its colours and faces. */
export const TUTORIAL_STYLE = `
:root {
  color-scheme: light dark;
  --paper: light-dark(#f2f5f5, #0f1923); --card: light-dark(#fff, #16232f);
  --ground: light-dark(#e6ebed, #1c2a36); --ink: light-dark(#16304b, #e6edf2);
  --soft: light-dark(#46596b, #b0c0cd); --line: light-dark(#c4ced6, #33475a);
  --edge: light-dark(#71859a, #71879b); --lake: light-dark(#1d5380, #93c5ea);
  --on-lake: light-dark(#fff, #0d1b27);
  --halfhitch-ground: var(--ground); --halfhitch-ink: var(--ink); --halfhitch-faint: var(--soft);
  --halfhitch-panel: var(--card); --halfhitch-line: var(--edge); --halfhitch-accent: var(--lake);
  --halfhitch-on-accent: var(--on-lake);
}
* { box-sizing: border-box; }
html { background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; text-size-adjust: 100%; }
body { margin: 0; }
halfhitch-tutorial { display: block; max-width: 60rem; margin: 0 auto; padding: 1rem clamp(.75rem, 3vw, 2rem) 2rem; }
h1, h2, h3 { font-family: "Iowan Old Style", "Palatino Linotype", Palatino, "URW Palladio L", P052, Georgia, serif; line-height: 1.2; overflow-wrap: anywhere; }
h1 { font-size: 1.9rem; margin: .5rem 0; } h2 { font-size: 1.35rem; margin: 0 0 .6rem; } h3 { font-size: 1.1rem; margin: 1rem 0 .6rem; }
header { border-bottom: 4px double var(--edge); margin-bottom: 1.25rem; padding-bottom: .75rem; }
section { background: var(--card); border: 1px solid var(--line); border-radius: 6px; padding: 1.1rem 1.2rem; margin-bottom: 1.25rem; min-width: 0; }
p, li { max-width: 68ch; overflow-wrap: anywhere; } li { margin: .3rem 0; } ol.substeps { list-style: lower-alpha; }
.legend { display: flex; flex-wrap: wrap; gap: .35rem 1.1rem; list-style: none; padding: 0; margin: 0; }
.legend li { display: inline-flex; gap: .45rem; align-items: center; }
halfhitch-swatch { flex: none; width: 1.7rem; height: .75rem; border: 1px solid var(--edge); border-radius: .4rem; }
halfhitch-piece, halfhitch-row, halfhitch-knot { display: block; }
.knots { display: grid; gap: 1rem; grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr)); }
figure { margin: 0; min-width: 0; } figcaption { font-weight: 600; margin-bottom: .3rem; }
nav { display: flex; flex-wrap: wrap; gap: .5rem .9rem; align-items: center; }
button, input { min-height: 44px; min-width: 44px; padding: .3rem .9rem; font: inherit; color: var(--ink); background: var(--card); border: 1px solid var(--edge); border-radius: 4px; }
button { cursor: pointer; } button:hover { border-color: var(--lake); } input { width: 6.5rem; }
button[aria-disabled="true"] { color: var(--soft); border-style: dashed; cursor: default; }
:focus-visible { outline: 3px solid var(--lake); outline-offset: 2px; }
footer { color: var(--soft); font-size: .875rem; }
@media print { nav, halfhitch-piece, halfhitch-row, .knots { display: none; } section { border: 0; padding: 0; } }
`;
