import { html, nothing, type ReactiveControllerHost, type TemplateResult } from 'lit';
import type { Session } from '../../project/session.js';
import type { Place } from '../edit/place.js';

/**
 * What would make the chart easier to knot. Looked through anew after every stroke, it would take the
 * device's breath: only while it is opened.
 */
export class Advice {
  private given = false;

  constructor(private readonly host: ReactiveControllerHost) {}

  card(session: Session | null, goTo: (place: Place) => void): TemplateResult {
    return html`<details
      class="card draw-easier"
      @toggle=${(event: Event) => void this.toggle((event.target as HTMLDetailsElement).open)}
    >
      <summary>Advice</summary>
      ${
        this.given
          ? html`<halfhitch-ease
              .session=${session}
              @place=${({ detail }: CustomEvent<Place>) => goTo(detail)}
            ></halfhitch-ease>`
          : nothing
      }
    </details>`;
  }

  private async toggle(open: boolean): Promise<void> {
    if (open) await import('../../ease/ease-panel.js');
    this.given = open;
    this.host.requestUpdate();
  }
}
