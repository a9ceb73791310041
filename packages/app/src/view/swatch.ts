/** A sample of a thread's colour. The style is set from here, since the policy allows no markup's. */
class Swatch extends HTMLElement {
  set colour(colour: string) {
    this.style.backgroundColor = /^#[0-9a-f]{6}$/i.test(colour) ? colour : 'transparent';
  }
  connectedCallback(): void {
    this.setAttribute('aria-hidden', 'true');
  }
}

customElements.define('halfhitch-swatch', Swatch);
