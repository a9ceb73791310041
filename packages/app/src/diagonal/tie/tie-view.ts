import { html, LitElement } from 'lit';

class DiagonalTie extends LitElement {
  protected override render() {
    return html``;
  }
}
customElements.define('halfhitch-diagonal-tie', DiagonalTie);
