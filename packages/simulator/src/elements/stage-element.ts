import {
  html,
  LitElement,
  nothing,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { drawFlat } from '../flat/draw-flat.js';
import { flatPicture } from '../flat/flat-picture.js';
import { Player, type Score } from '../playback/player.js';
import { type Camera, frameBox } from '../thread/camera.js';
import type { Box, Spotlight, ThreadLine } from '../thread/thread-line.js';
import type { ThreadScene } from '../webgl/thread-scene.js';
import { labelPlaces } from './label-places.js';
import { stageStyles } from './stage-styles.js';

export type StageView = 'front' | 'back';

/** What a position shows and says. */
export interface StageMoment {
  readonly lines: readonly ThreadLine[];
  /** What the picture must hold. */
  readonly box: Box;
  /** What is to be looked at: threads farther from it than its radius in mm are faded. */
  readonly spotlight?: Spotlight;
}

export interface StageWords {
  readonly heading: string;
  readonly moves: readonly string[];
  /** Place in `moves`; -1 when none is being made. */
  readonly current: number;
  /** Said move by move, when the maker goes at their own pace. */
  readonly said: string;
  /** Said while playing, when moves pass too fast. */
  readonly saidPlaying: string;
}

export interface StepDetail {
  /** Position reached. */
  readonly position: number;
  /** Steps done by then. */
  readonly done: number;
  readonly text: string;
}

type Drawing = 'waiting' | 'webgl' | 'flat';

const SPEEDS = [0.25, 0.5, 1, 1.5, 2];
const TURN_STEP = Math.PI / 24;
const MOST_PITCH = 1.2;
const FLIP_SECONDS = 0.6;
/** Device pixels for each CSS pixel: more costs a phone much and shows little. */
const MOST_PIXELS = 2;

/**
 * A picture of threads that is played: the stage, its words and its controls. What is played
 * comes from the elements built on it.
 *
 * Fires `halfhitch-step`, `halfhitch-play`, `halfhitch-pause`, `halfhitch-end` and
 * `halfhitch-view`.
 */
export abstract class StageElement extends LitElement {
  static override styles = [stageStyles];

  static override properties: PropertyDeclarations = {
    view: { reflect: true },
    speed: { type: Number, reflect: true },
    position: { type: Number },
    mirror: { type: Boolean, reflect: true },
    drawing: { state: true },
    notice: { state: true },
    turning: { state: true },
  };

  declare view: StageView;
  declare speed: number;
  declare mirror: boolean;
  declare protected drawing: Drawing;
  declare protected notice: string;
  declare protected turning: boolean;

  protected readonly player: Player;
  private scene: ThreadScene | null = null;
  private sceneWanted = false;
  /** Grows whenever the scene is let go: what was on its way for an earlier time is dropped. */
  private sceneTime = 0;
  private yaw = 0;
  private pitch = 0;
  /** Yaw the camera is turning to, for front and back. */
  private yawGoal: number | null = null;
  private frame = 0;
  private lastTick = 0;
  private onScreen = false;
  private stale = true;
  private watchers: { disconnect(): void }[] = [];
  private stopsDone = 0;
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');
  private readonly dark = matchMedia('(prefers-color-scheme: dark)');
  private drag: { id: number; x: number; y: number } | null = null;

  constructor() {
    super();
    this.view = 'front';
    this.speed = 1;
    this.mirror = false;
    this.drawing = 'waiting';
    this.notice = '';
    this.turning = false;
    this.player = new Player(
      { length: 0, stops: [0], stills: [0], secondsAt: () => 1 },
      { moved: () => this.moved(), ended: () => this.ended() },
    );
  }

  /** Loads what poses are made from: large, so not before an element comes into sight. */
  protected abstract loadPoses(): Promise<void>;
  /** What is seen at a position, or null while there is nothing to show. */
  protected abstract momentAt(position: number): StageMoment | null;
  protected abstract wordsAt(position: number): StageWords;
  /** What the picture is of, for a screen reader. */
  protected abstract get pictureName(): string;
  /** What one press of the step buttons goes on by: "half hitch" or "step". */
  protected abstract get stepName(): string;

  /** Where the playing is, from 0 to the length of what is played. */
  get position(): number {
    return this.player.position;
  }
  set position(position: number) {
    this.player.seek(Number(position));
  }

  get playing(): boolean {
    return this.player.playing;
  }

  get length(): number {
    return this.scoreNow.length;
  }

  play(): void {
    if (this.playing) return;
    this.player.speed = this.speedInUse;
    this.player.stills = this.calm.matches;
    this.player.play();
    this.lastTick = 0;
    this.changed();
    this.fire('halfhitch-play');
  }

  pause(): void {
    if (!this.playing) return;
    this.player.pause();
    this.changed();
    this.fire('halfhitch-pause');
  }

  /** Goes to a position; playing goes on from there. */
  seek(position: number): void {
    this.player.seek(position);
  }

  /** Goes to where the next half hitch or step ends. */
  stepForward(): void {
    this.pause();
    this.player.step(1);
  }

  /** Goes back to where the half hitch or step before began. */
  stepBack(): void {
    this.pause();
    this.player.step(-1);
  }

  flip(): void {
    this.view = this.view === 'front' ? 'back' : 'front';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.calm.addEventListener('change', this.onPreference);
    this.dark.addEventListener('change', this.onPreference);
    void this.updateComplete.then(() => this.watch());
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.pause();
    this.calm.removeEventListener('change', this.onPreference);
    this.dark.removeEventListener('change', this.onPreference);
    for (const watcher of this.watchers) watcher.disconnect();
    this.watchers = [];
    cancelAnimationFrame(this.frame);
    this.frame = 0;
    this.onScreen = false;
    this.letSceneGo();
  }

  protected override willUpdate(changes: PropertyValues<this>): void {
    if (changes.has('speed')) this.player.speed = this.speedInUse;
    if (changes.has('view')) {
      const first = changes.get('view') === undefined;
      this.turnTo(this.view === 'back' ? Math.PI : 0, first || this.calm.matches);
      if (!first) this.fire('halfhitch-view');
    }
  }

  protected override updated(): void {
    this.stale = true;
    this.wake();
  }

  /** Takes over a new score; the position becomes `at`. */
  protected score(score: Score, at: number): void {
    this.scoreNow = score;
    this.player.load(score);
    this.player.seek(at);
    this.stopsDone = this.doneAt(this.position);
    this.changed();
  }
  private scoreNow: Score = { length: 0, stops: [0], stills: [0], secondsAt: () => 1 };

  protected override render(): TemplateResult {
    const words = this.wordsAt(this.position);
    const { playing } = this;
    const step = this.stepName;
    return html`
      <div
        class="stage ${this.turning ? 'turning' : ''}"
        part="stage"
        tabindex="0"
        role="group"
        aria-roledescription="moving picture"
        aria-label="${this.pictureName}, seen from the ${this.view}"
        aria-describedby="hint"
        @keydown=${this.onKey}
        @pointerdown=${this.onPointerDown}
        @pointermove=${this.onPointerMove}
        @pointerup=${this.onPointerUp}
        @pointercancel=${this.onPointerUp}
      >
        ${this.picture()}
        <span class="side" aria-hidden="true">${this.view === 'front' ? 'Front' : 'Back'}</span>
      </div>
      ${this.notice === '' ? nothing : html`<p class="notice" part="notice">${this.notice}</p>`}
      <div class="controls" part="controls" @keydown=${this.onControlKey}>
        <input
          class="scrub"
          part="scrubber"
          type="range"
          min="0"
          max=${this.length}
          step="0.01"
          .value=${String(this.position)}
          aria-label="Place in the knotting"
          aria-valuetext=${words.heading}
          @input=${this.onScrub}
        />
        <button class="play" part="button play" @click=${this.onPlay}>
          ${playing ? 'Pause' : 'Play'}
        </button>
        <button
          part="button"
          aria-label="Back one ${step}"
          title="Back one ${step}"
          aria-disabled=${this.position <= 0 ? 'true' : 'false'}
          @click=${this.stepBack}
        >
          ${backIcon}
        </button>
        <button
          part="button"
          aria-label="On one ${step}"
          title="On one ${step}"
          aria-disabled=${this.position >= this.length ? 'true' : 'false'}
          @click=${this.stepForward}
        >
          ${onIcon}
        </button>
        <button part="button" @click=${this.flip}>
          ${this.view === 'front' ? 'See the back' : 'See the front'}
        </button>
        <label>
          Speed
          <select part="speed" .value=${String(this.speed)} @change=${this.onSpeed}>
            ${SPEEDS.map(
              (speed) =>
                html`<option value=${speed} ?selected=${speed === this.speed}>${speedName(speed)}</option>`,
            )}
          </select>
        </label>
      </div>
      <div class="caption" part="caption" aria-hidden="true">
        <p class="heading">${words.heading}</p>
        ${
          words.moves.length === 1
            ? html`<p class="words">${words.moves[0]}</p>`
            : html`<ol>
              ${words.moves.map(
                (move, i) => html`<li class=${i === words.current ? 'current' : ''}>${move}</li>`,
              )}
            </ol>`
        }
      </div>
      <p class="said" part="live" aria-live="polite" aria-atomic="true">
        ${playing && !this.calm.matches ? words.saidPlaying : words.said}
      </p>
      <p class="hint" part="hint" id="hint">
        Drag the picture to look round.
        <span class="keys">
          With the picture in focus: <kbd>Space</kbd> plays, <kbd>←</kbd> <kbd>→</kbd> go move by
          move, <kbd>Shift</kbd>+<kbd>←</kbd> <kbd>→</kbd> by ${step}, <kbd>↑</kbd> <kbd>↓</kbd> a
          little, <kbd>Home</kbd> <kbd>End</kbd> to the start and end, <kbd>F</kbd> turns it over,
          <kbd>W</kbd> <kbd>A</kbd> <kbd>S</kbd> <kbd>D</kbd> look round, <kbd>0</kbd> straight on.
        </span>
      </p>
    `;
  }

  private picture(): TemplateResult {
    if (this.drawing === 'webgl') return html`<canvas part="canvas" aria-hidden="true"></canvas>`;
    return html`<svg part="drawing" aria-hidden="true" focusable="false"></svg>`;
  }

  // ---- the picture ----

  private watch(): void {
    if (!this.isConnected) return;
    const stage = this.stage;
    if (stage === null || this.watchers.length > 0) return;
    const size = new ResizeObserver(() => this.redraw());
    size.observe(stage);
    const sight = new IntersectionObserver((entries) => {
      const seen = entries[entries.length - 1]?.isIntersecting ?? false;
      if (seen === this.onScreen) return;
      this.onScreen = seen;
      this.lastTick = 0;
      if (!seen) return;
      void this.wantScene();
      this.redraw();
    });
    sight.observe(stage);
    this.watchers = [size, sight];
  }

  /** Loads the 3D part when it is first needed; the flat picture stands in until then. */
  private async wantScene(): Promise<void> {
    if (this.sceneWanted) return;
    this.sceneWanted = true;
    const time = this.sceneTime;
    const loading = import('../webgl/thread-scene.js');
    // Dealt with below, but perhaps only after it has failed.
    loading.catch(() => undefined);
    try {
      await this.loadPoses();
    } catch {
      if (time !== this.sceneTime) return;
      this.sceneWanted = false;
      this.notice = 'The picture could not be loaded. Its words still tell every move.';
      return;
    }
    this.redraw();
    try {
      const { ThreadScene: Scene } = await loading;
      if (time !== this.sceneTime) return;
      const scene = new Scene({
        contextLost: () => {
          this.drawing = 'flat';
          this.notice =
            'The browser has taken the 3D picture away for now; this drawing shows the same threads.';
        },
        contextRestored: () => {
          this.drawing = 'webgl';
          this.notice = '';
        },
      });
      this.scene = scene;
      const moment = this.momentAt(this.position);
      if (moment !== null) scene.pose(moment.lines);
      await scene.ready();
      if (this.scene !== scene) return;
      this.drawing = 'webgl';
      this.notice = '';
    } catch {
      if (time !== this.sceneTime) return;
      this.drawing = 'flat';
      this.notice =
        'The 3D picture cannot be shown: this browser gives no WebGL. This drawing shows the same threads.';
    }
  }

  private letSceneGo(): void {
    this.sceneWanted = false;
    this.sceneTime++;
    this.scene?.dispose();
    this.scene = null;
    this.drawing = 'waiting';
    this.notice = '';
  }

  /** Draws anew at the next frame, whatever may have changed. */
  protected redraw(): void {
    this.stale = true;
    this.wake();
  }

  private wake(): void {
    if (this.frame !== 0 || !this.isConnected) return;
    this.frame = requestAnimationFrame((now) => {
      this.frame = 0;
      this.tick(now);
    });
  }

  private tick(now: number): void {
    const passed = this.lastTick === 0 ? 0 : (now - this.lastTick) / 1000;
    this.lastTick = now;
    if (!this.onScreen) {
      this.lastTick = 0;
      return;
    }
    this.player.tick(passed);
    if (this.yawGoal !== null) this.turnOn(passed);
    if (this.stale) {
      this.stale = false;
      this.draw();
    }
    if (this.playing || this.yawGoal !== null) this.wake();
    else this.lastTick = 0;
  }

  private draw(): void {
    const { stage } = this;
    const moment = this.momentAt(this.position);
    if (stage === null || moment === null) return;
    const width = stage.clientWidth;
    const height = stage.clientHeight;
    if (width === 0 || height === 0) return;
    const camera = frameBox(moment.box, {
      yaw: this.yaw,
      pitch: this.pitch,
      aspect: width / height,
    });
    const lines = moment.lines;
    const canvas = this.renderRoot.querySelector('canvas');
    if (this.scene !== null && canvas !== null && this.drawing === 'webgl') {
      const pixels = Math.min(MOST_PIXELS, window.devicePixelRatio || 1);
      const across = Math.round(width * pixels);
      const down = Math.round(height * pixels);
      if (canvas.width !== across || canvas.height !== down) {
        canvas.width = across;
        canvas.height = down;
      }
      this.scene.setGround(getComputedStyle(stage).backgroundColor);
      this.scene.pose(lines, moment.spotlight ?? null);
      this.scene.drawOnto(canvas, camera, reachOf(moment.box));
    } else {
      const drawing = this.renderRoot.querySelector<SVGElement>('.stage > svg');
      if (drawing !== null)
        drawFlat(
          drawing,
          flatPicture(lines, camera, width, height, moment.spotlight),
          width,
          height,
        );
    }
    this.placeLabels(moment, camera, width, height);
  }

  private placeLabels(moment: StageMoment, camera: Camera, width: number, height: number): void {
    const { stage } = this;
    if (stage === null) return;
    const placed = labelPlaces(moment, camera, width, height);
    const labels = [...stage.querySelectorAll<HTMLElement>('.label')];
    while (labels.length < placed.length) {
      const made = document.createElement('span');
      made.className = 'label';
      made.setAttribute('part', 'label');
      made.setAttribute('aria-hidden', 'true');
      stage.append(made);
      labels.push(made);
    }
    labels.forEach((label, i) => {
      const place = placed[i];
      label.hidden = place === undefined;
      if (place === undefined) return;
      if (label.textContent !== place.text) label.textContent = place.text;
      const x = place.leftward ? place.x - label.offsetWidth : place.x;
      const across = Math.max(4, Math.min(width - label.offsetWidth - 4, x));
      const down = Math.max(6, Math.min(height - label.offsetHeight - 6, place.y));
      label.style.transform = `translate(${across.toFixed(0)}px, ${down.toFixed(0)}px)`;
    });
  }

  // ---- the camera ----

  private turnTo(yaw: number, atOnce: boolean): void {
    this.pitch = 0;
    if (atOnce) {
      this.yaw = yaw;
      this.yawGoal = null;
    } else {
      this.yaw = nearestTurn(this.yaw, yaw);
      this.yawGoal = yaw;
    }
    this.redraw();
  }

  private turnOn(passed: number): void {
    const goal = this.yawGoal as number;
    const most = (Math.PI / FLIP_SECONDS) * passed;
    const left = goal - this.yaw;
    if (Math.abs(left) <= most) {
      this.yaw = goal;
      this.yawGoal = null;
    } else {
      this.yaw += Math.sign(left) * most;
    }
    this.stale = true;
  }

  private look(yaw: number, pitch: number): void {
    this.yawGoal = null;
    this.yaw += yaw;
    this.pitch = Math.max(-MOST_PITCH, Math.min(MOST_PITCH, this.pitch + pitch));
    this.redraw();
  }

  private readonly onPointerDown = (event: PointerEvent): void => {
    if (event.button !== 0 || this.drag !== null) return;
    this.drag = { id: event.pointerId, x: event.clientX, y: event.clientY };
    (event.currentTarget as HTMLElement).setPointerCapture(event.pointerId);
    this.turning = true;
  };

  private readonly onPointerMove = (event: PointerEvent): void => {
    const { drag } = this;
    if (drag === null || event.pointerId !== drag.id) return;
    this.look((drag.x - event.clientX) * 0.009, (event.clientY - drag.y) * 0.009);
    drag.x = event.clientX;
    drag.y = event.clientY;
  };

  private readonly onPointerUp = (event: PointerEvent): void => {
    if (this.drag?.id !== event.pointerId) return;
    this.drag = null;
    this.turning = false;
  };

  // ---- controls ----

  private readonly onPlay = (): void => {
    if (this.playing) this.pause();
    else this.play();
  };

  private readonly onScrub = (event: Event): void => {
    this.pause();
    this.seek(Number((event.target as HTMLInputElement).value));
  };

  private readonly onSpeed = (event: Event): void => {
    this.speed = Number((event.target as HTMLSelectElement).value);
  };

  private readonly onKey = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (!this.pressed(event)) return;
    event.preventDefault();
    event.stopPropagation();
  };

  /** On a button, the letters still work; space and arrows are the control's own. */
  private readonly onControlKey = (event: KeyboardEvent): void => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    if (event.key.toLowerCase() !== 'f' || event.target instanceof HTMLSelectElement) return;
    event.preventDefault();
    this.flip();
  };

  private pressed(event: KeyboardEvent): boolean {
    switch (event.key) {
      case ' ':
        this.onPlay();
        return true;
      case 'ArrowRight':
        if (event.shiftKey) this.stepForward();
        else this.move(1);
        return true;
      case 'ArrowLeft':
        if (event.shiftKey) this.stepBack();
        else this.move(-1);
        return true;
      case 'ArrowUp':
        this.nudge(-0.05);
        return true;
      case 'ArrowDown':
        this.nudge(0.05);
        return true;
      case 'Home':
        this.pause();
        this.seek(0);
        return true;
      case 'End':
        this.pause();
        this.seek(this.length);
        return true;
      case '0':
        this.turnTo(this.view === 'back' ? Math.PI : 0, this.calm.matches);
        return true;
    }
    switch (event.key.toLowerCase()) {
      case 'f':
        this.flip();
        return true;
      case 'a':
        this.look(-TURN_STEP, 0);
        return true;
      case 'd':
        this.look(TURN_STEP, 0);
        return true;
      case 'w':
        this.look(0, TURN_STEP);
        return true;
      case 's':
        this.look(0, -TURN_STEP);
        return true;
    }
    return false;
  }

  /** To the next move, or the one before. */
  private move(way: 1 | -1): void {
    this.pause();
    this.player.move(way);
  }

  private nudge(by: number): void {
    this.pause();
    this.seek(this.position + by);
  }

  // ---- news ----

  private changed(): void {
    this.requestUpdate();
  }

  private moved(): void {
    this.changed();
    this.redraw();
    const done = this.doneAt(this.position);
    if (done === this.stopsDone) return;
    this.stopsDone = done;
    const words = this.wordsAt(this.position);
    this.fire('halfhitch-step', {
      position: this.position,
      done,
      text: words.said,
    } satisfies StepDetail);
  }

  private ended(): void {
    this.changed();
    this.fire('halfhitch-end');
  }

  private doneAt(position: number): number {
    const { stops } = this.scoreNow;
    let done = -1;
    for (const stop of stops) {
      if (stop > position + 1e-6) break;
      done++;
    }
    return Math.max(0, done);
  }

  private fire(name: string, detail?: StepDetail): void {
    this.dispatchEvent(
      new CustomEvent(name, { detail: detail ?? null, bubbles: true, composed: true }),
    );
  }

  private readonly onPreference = (): void => {
    this.player.stills = this.calm.matches;
    this.changed();
    this.redraw();
  };

  private get stage(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('.stage');
  }

  private get speedInUse(): number {
    return Number.isFinite(this.speed) && this.speed > 0 ? Math.min(8, this.speed) : 1;
  }
}

function reachOf(box: Box): number {
  return (
    0.5 * Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2])
  );
}

/** The angle equal to `from` but for whole turns that is nearest to `to`. */
function nearestTurn(from: number, to: number): number {
  const turn = 2 * Math.PI;
  return to + (((((from - to) % turn) + turn + Math.PI) % turn) - Math.PI);
}

function speedName(speed: number): string {
  const names: Record<number, string> = {
    0.25: 'Very slow',
    0.5: 'Slow',
    1: 'Steady',
    1.5: 'Brisk',
    2: 'Fast',
  };
  return names[speed] ?? String(speed);
}

const backIcon = html`<svg class="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true"><path d="M12.5 4 6.5 10l6 6" fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
const onIcon = html`<svg class="icon" viewBox="0 0 20 20" width="20" height="20" aria-hidden="true"><path d="m7.5 4 6 6-6 6" fill="none" stroke="currentColor" stroke-width="2" stroke-linecap="round" stroke-linejoin="round"/></svg>`;
