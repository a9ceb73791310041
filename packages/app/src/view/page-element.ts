import { LitElement } from 'lit';

/** An element in the page itself, so that its style sheets, find and print reach everything in it. */
export abstract class PageElement extends LitElement {
  protected override createRenderRoot(): HTMLElement {
    return this;
  }
}
