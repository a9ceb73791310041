import '@halfhitch/simulator';
import { InputError, readChartDocument } from '@halfhitch/core';
import { html, render } from 'lit';
import { EMBEDDED_ID } from '../embedded.js';
import { TUTORIAL_STYLE } from './style.js';
import { Tutorial } from './tutorial.js';

// Set from here, since the page's policy lets no style in the markup.
const style = new CSSStyleSheet();
style.replaceSync(TUTORIAL_STYLE);
document.adoptedStyleSheets = [style];

const held = document.getElementById(EMBEDDED_ID)?.textContent ?? '';
try {
  const tutorial = new Tutorial();
  tutorial.chart = readChartDocument(held).chart;
  document.body.append(tutorial);
} catch (error) {
  const why = error instanceof InputError ? error.message : 'Something in it went wrong.';
  render(html`<main><p>The pattern in this page cannot be read. ${why}</p></main>`, document.body);
}
