import { html, LitElement } from 'lit';

class DiagonalCut extends LitElement {
  protected override render() {
    return html``;
  }
}
customElements.define('halfhitch-diagonal-cut', DiagonalCut);
