import { html, LitElement } from 'lit';

class DiagonalCheck extends LitElement {
  protected override render() {
    return html``;
  }
}
customElements.define('halfhitch-diagonal-check', DiagonalCheck);
