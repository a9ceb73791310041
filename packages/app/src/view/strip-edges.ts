import type { ReactiveController, ReactiveControllerHost } from 'lit';

/**
 * Marks at which ends a strip that is pushed sideways goes on (`data-more`: before, after or both),
 * so that the style sheet can let it fade out there.
 */
export class StripEdges implements ReactiveController {
  private readonly strips = new Set<Element>();
  private readonly sizes = new ResizeObserver((found) => {
    for (const { target } of found) mark(target);
  });
  private frame = 0;

  /** @param selector of the strips in the host */
  constructor(
    private readonly host: ReactiveControllerHost & Element,
    private readonly selector: string,
  ) {
    host.addController(this);
  }

  hostUpdated(): void {
    for (const strip of this.host.querySelectorAll(this.selector)) {
      if (this.strips.has(strip)) continue;
      this.strips.add(strip);
      strip.addEventListener('scroll', onScroll, { passive: true });
      this.sizes.observe(strip);
    }
    // What is in them may have changed, and their own size not.
    if (this.frame !== 0) return;
    this.frame = requestAnimationFrame(() => {
      this.frame = 0;
      for (const strip of this.strips) mark(strip);
    });
  }

  hostDisconnected(): void {
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.sizes.disconnect();
    for (const strip of this.strips) strip.removeEventListener('scroll', onScroll);
    this.strips.clear();
  }
}

const onScroll = ({ currentTarget }: Event): void => mark(currentTarget as Element);

function mark(strip: Element): void {
  const { scrollLeft, clientWidth, scrollWidth } = strip;
  const before = scrollLeft > 1;
  const after = scrollLeft + clientWidth < scrollWidth - 1;
  const more = before && after ? 'both' : before ? 'before' : after ? 'after' : '';
  if (strip.getAttribute('data-more') !== more) strip.setAttribute('data-more', more);
}
