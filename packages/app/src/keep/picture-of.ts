/** A picture from memory: shows a Blob, and gives its address back when it is no longer shown. */
class BlobPicture extends HTMLElement {
  private shown: Blob | null = null;
  private address: string | null = null;

  set blob(blob: Blob | null) {
    if (blob === this.shown) return;
    this.shown = blob;
    if (this.isConnected) this.show();
  }

  connectedCallback(): void {
    this.setAttribute('aria-hidden', 'true');
    this.show();
  }

  disconnectedCallback(): void {
    this.clear();
  }

  private show(): void {
    this.clear();
    if (this.shown === null) return;
    this.address = URL.createObjectURL(this.shown);
    const image = document.createElement('img');
    image.alt = '';
    image.decoding = 'async';
    image.src = this.address;
    this.append(image);
  }

  private clear(): void {
    this.replaceChildren();
    if (this.address !== null) URL.revokeObjectURL(this.address);
    this.address = null;
  }
}

customElements.define('halfhitch-blob-picture', BlobPicture);
