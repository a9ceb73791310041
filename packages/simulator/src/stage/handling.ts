import type { Player } from '../playback/player.js';
import type { CameraTurn, StageView } from './camera-turn.js';
import { Drag } from './drag.js';
import { deedOf } from './keys.js';
import type { Preferences } from './preferences.js';

/** The stage that is handled, as a page sees it. */
export interface HandledStage {
  readonly still: boolean;
  readonly playing: boolean;
  readonly position: number;
  readonly length: number;
  readonly view: StageView;
  readonly mirror: boolean;
  play(): void;
  pause(): void;
  seek(position: number): void;
  step(steps: number): void;
  flip(): void;
}

/** What turns with the handling. */
export interface HandledParts {
  readonly player: Player;
  readonly turn: CameraTurn;
  readonly preferences: Preferences;
  redraw(): void;
  /** The picture is being turned by hand, or no longer. */
  holding(on: boolean): void;
}

/** What a maker does to a stage by buttons, keys and pointer. */
export class Handling {
  readonly drag: Drag;

  constructor(
    readonly stage: HandledStage,
    private readonly parts: HandledParts,
  ) {
    this.drag = new Drag(
      (yaw, pitch) => this.look(yaw, pitch),
      (on) => parts.holding(on),
    );
  }

  readonly playOrPause = (): void => {
    if (this.stage.playing) this.stage.pause();
    else this.stage.play();
  };

  readonly scrub = (position: number): void => {
    if (this.stage.still) return;
    this.stage.pause();
    this.stage.seek(position);
  };

  /** A key pressed on the picture itself. */
  readonly pressed = (event: KeyboardEvent): void => {
    const deed = isBrowsers(event) ? null : deedOf(event, this);
    if (deed === null) return;
    deed();
    event.preventDefault();
    event.stopPropagation();
  };

  /** On a button, the letters still work; space and arrows are the control's own. */
  readonly pressedOnControl = (event: KeyboardEvent): void => {
    if (isBrowsers(event) || event.target instanceof HTMLSelectElement) return;
    if (event.key.toLowerCase() !== 'f') return;
    event.preventDefault();
    this.stage.flip();
  };

  /** To the next move, or the one before. */
  move(way: 1 | -1): void {
    this.stage.pause();
    this.parts.player.move(way);
  }

  /** Turns the camera, in radians. */
  look(yaw: number, pitch: number): void {
    this.parts.turn.by(yaw, pitch);
    this.parts.redraw();
  }

  /** Back to where the view looks from. */
  lookHome(): void {
    const { view, mirror } = this.stage;
    this.parts.turn.to(view, mirror, this.parts.preferences.calm);
    this.parts.redraw();
  }
}

function isBrowsers(event: KeyboardEvent): boolean {
  return event.altKey || event.ctrlKey || event.metaKey;
}
