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
import { directionOfText, languageOf } from '../messages/catalogue.js';
import { IN_ENGLISH, MESSAGES, type Words } from '../messages/words.js';
import { Player, type Score } from '../playback/player.js';
import { type Camera, FIELD_OF_VIEW, frameBox } from '../thread/camera.js';
import { ghostOf, trailOf } from '../thread/onion.js';
import type { Box, Spotlight, ThreadLine } from '../thread/thread-line.js';
import type { ContextUser, StageScene } from '../webgl/stage-scene.js';
import type { ThreadScene } from '../webgl/thread-scene.js';
import { CameraTurn, STAGE_VIEWS, type StageView } from './camera-turn.js';
import { labelPlaces } from './label-places.js';
import { type StageControls, type StageSwitch, stageControls } from './stage-controls.js';
import { stageStyles } from './stage-styles.js';

export type { StageView } from './camera-turn.js';

/** What a position shows and says. */
export interface StageMoment {
  readonly lines: readonly ThreadLine[];
  /** What the picture must hold. */
  readonly box: Box;
  /** What is to be looked at: threads farther from it than its radius in mm are faded. */
  readonly spotlight?: Spotlight;
  /** Middle of what the magnifier shows, in mm, y up; none for no magnifier. */
  readonly crossing?: readonly [number, number, number];
  /** Width of what the magnifier shows, in mm; default: a fixed part of the picture. */
  readonly magnified?: number;
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

/** Of `halfhitch-knot` and `halfhitch-row`: what has just been tied, counted from 0. */
export interface TiedDetail {
  readonly row: number;
  /** Place in its row in the order of knotting; null for a row. */
  readonly knot: number | null;
}

type Drawing = 'waiting' | 'webgl' | 'flat';

const TURN_STEP = Math.PI / 24;
/** Device pixels for each CSS pixel: more costs a phone much and shows little. */
const MOST_PIXELS = 2;
/** Positions between the lines of a trail, and how many there are. */
const TRAIL_STEP = 0.07;
const TRAIL_LINES = 4;
const MAGNIFICATION = 3.4;
/** How much of its own width a label goes to the left of its place. */
const LABEL_SHIFT = { left: 1, across: 0.5, right: 0 } as const;

/**
 * A picture of threads that is played: the stage, its words and its controls. What is played
 * comes from the elements built on it.
 *
 * @attr view - front, back, side, edge or hands (as the maker sees it)
 * @attr speed - 1 is steady; at most 8
 * @attr position - where the playing is
 * @attr mirror - as a left-handed maker ties it: the mirror image, left and right changed
 * @attr backward - plays from the end, as work is undone
 * @attr loop - plays the step it is in again and again
 * @attr ghost - shows where the tying string will be after its next move
 * @attr trail - shows where the tying string was just before
 * @attr magnifier - shows the crossing once more, larger
 * @attr controls - all, few or none
 * @attr still - only the picture as it is at its position: no moves in words, no controls, no
 *   playing; strings are called by their names
 * @attr lang - en, de, or a language added to MESSAGES; default: that of the page
 * @slot poster - seen in the picture's place until it is drawn
 * @slot caption - goes in place of the written moves
 * @csspart stage - the picture with its labels
 * @csspart label - a name beside a string
 * @csspart controls - all buttons
 * @csspart caption - the moves in writing
 * @csspart live - what a screen reader says
 * @csspart notice - says why the picture is flat
 * @csspart canvas - the picture in 3D
 * @csspart drawing - the flat picture, where there is no 3D or not yet
 * @csspart magnifier - the crossing once more, larger
 * @csspart scrubber - the slider of the position
 * @csspart button - any button, and what opens the menu
 * @csspart play - the button that plays and stops
 * @csspart speed - the choice of speed
 * @csspart more - the menu with what opens it
 * @csspart menu - the menu itself
 * @csspart view - the choice of where to look from
 * @csspart switch - a switch of the menu
 * @csspart hint - how to look round, and the keys
 * @cssprop --halfhitch-ground - behind threads
 * @cssprop --halfhitch-ink - text
 * @cssprop --halfhitch-faint - text that matters less
 * @cssprop --halfhitch-panel - behind buttons and labels
 * @cssprop --halfhitch-line - edges of buttons
 * @cssprop --halfhitch-accent - what is chosen or in focus, and the button to go on
 * @cssprop --halfhitch-on-accent - text on that
 * @cssprop --halfhitch-radius - corners of pictures
 * @cssprop --halfhitch-stage-height - height of the picture
 * @fires halfhitch-step - a half hitch or move was done or undone; detail: position, done, text
 * @fires halfhitch-knot - a knot was tied; detail: row, knot
 * @fires halfhitch-row - a row was tied; detail: row
 * @fires halfhitch-play - playing begins
 * @fires halfhitch-pause - playing is stopped
 * @fires halfhitch-end - playing has come to its end
 * @fires halfhitch-view - it is seen from another side
 */
export abstract class StageElement extends LitElement {
  static override styles = [stageStyles];

  static override properties: PropertyDeclarations = {
    view: { reflect: true },
    speed: { type: Number, reflect: true },
    position: { type: Number, noAccessor: true },
    mirror: { type: Boolean, reflect: true },
    backward: { type: Boolean, reflect: true },
    loop: { type: Boolean, reflect: true },
    ghost: { type: Boolean, reflect: true },
    trail: { type: Boolean, reflect: true },
    magnifier: { type: Boolean, reflect: true },
    controls: { reflect: true },
    still: { type: Boolean, reflect: true },
    lang: { reflect: true },
    drawing: { state: true },
    notice: { state: true },
    turning: { state: true },
  };

  declare view: StageView;
  declare speed: number;
  declare mirror: boolean;
  declare backward: boolean;
  declare loop: boolean;
  declare ghost: boolean;
  declare trail: boolean;
  declare magnifier: boolean;
  declare controls: StageControls;
  declare still: boolean;
  declare protected drawing: Drawing;
  declare protected notice: '' | 'notice.notLoaded' | 'notice.lost' | 'notice.noWebgl';
  declare protected turning: boolean;

  /** Says messages in the language this element is in. */
  protected words: Words = IN_ENGLISH;
  protected readonly player: Player;
  private scene: StageScene | null = null;
  private sceneWanted = false;
  /** Grows whenever the scene is let go: what was on its way for an earlier time is dropped. */
  private sceneTime = 0;
  private readonly turn = new CameraTurn();
  private frame = 0;
  private lastTick = 0;
  private onScreen = false;
  private stale = true;
  private watchers: { disconnect(): void }[] = [];
  private stopsDone = 0;
  private knotsDone = 0;
  private readonly calm = matchMedia('(prefers-reduced-motion: reduce)');
  private readonly dark = matchMedia('(prefers-color-scheme: dark)');
  private drag: { id: number; x: number; y: number } | null = null;

  constructor() {
    super();
    this.view = 'front';
    this.speed = 1;
    this.mirror = false;
    this.backward = false;
    this.loop = false;
    this.ghost = false;
    this.trail = false;
    this.magnifier = false;
    this.controls = 'all';
    this.still = false;
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
  /** How many whole knots are tied at a position. */
  protected abstract knotsDoneAt(position: number): number;
  /** The knot that is the one of this number, and whether a row ends with it. */
  protected abstract tiedAs(knot: number): {
    readonly detail: TiedDetail;
    readonly endsRow: boolean;
  };

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
    if (this.playing || this.still) return;
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

  /** Goes on by some half hitches or steps, or back by as many when `steps` is below 0. */
  step(steps = 1): void {
    this.pause();
    const many = Math.min(10_000, Math.abs(Math.trunc(steps) || 0));
    for (let i = 0; i < many; i++) this.player.step(steps < 0 ? -1 : 1);
  }

  /** Goes to where the next half hitch or step ends. */
  stepForward(): void {
    this.step(1);
  }

  /** Goes back to where the half hitch or step before began. */
  stepBack(): void {
    this.step(-1);
  }

  flip(): void {
    this.view = this.view === 'back' ? 'front' : 'back';
  }

  override connectedCallback(): void {
    super.connectedCallback();
    this.readLanguage();
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
    this.readLanguage();
    if (changes.has('speed')) this.player.speed = this.speedInUse;
    this.player.loop = this.loop;
    this.player.backward = this.backward;
    if (changes.has('view')) {
      const first = changes.get('view') === undefined;
      if (!STAGE_VIEWS.includes(this.view)) this.view = 'front';
      this.turn.to(this.view, this.mirror, first || this.calm.matches);
      if (!first) this.fire('halfhitch-view');
    }
  }

  protected override updated(): void {
    this.toggleAttribute('playing', this.playing);
    // Not at every frame: only where it comes to rest.
    if (!this.playing) this.setAttribute('position', String(this.position));
    this.stale = true;
    this.wake();
  }

  private readLanguage(): void {
    const language = MESSAGES.languageFor(languageOf(this));
    if (language === this.language) return;
    this.language = language;
    this.words = MESSAGES.in(language);
  }
  private language = 'en';

  /** Takes over a new score; the position becomes `at`. */
  protected score(score: Score, at: number): void {
    this.scoreNow = score;
    this.player.load(score);
    this.player.seek(at);
    this.stopsDone = this.doneAt(this.position);
    this.knotsDone = this.knotsDoneAt(this.position);
    this.changed();
  }
  private scoreNow: Score = { length: 0, stops: [0], stills: [0], secondsAt: () => 1 };

  protected override render(): TemplateResult {
    const said = this.wordsAt(this.position);
    const { playing, words } = this;
    const picture = words('picture.from', {
      picture: this.pictureName,
      view: words(`view.${this.view}`),
    });
    return html`
      <div class="all" dir=${directionOfText(this.language)}>
        <div
          class="stage ${this.turning ? 'turning' : ''}"
          part="stage"
          tabindex="0"
          role="group"
          aria-roledescription=${words(this.still ? 'control.stillPicture' : 'control.movingPicture')}
          aria-label=${picture}
          aria-describedby=${this.controls === 'all' && !this.still ? 'hint' : nothing}
          @keydown=${this.onKey}
          @pointerdown=${this.onPointerDown}
          @pointermove=${this.onPointerMove}
          @pointerup=${this.onPointerUp}
          @pointercancel=${this.onPointerUp}
        >
          ${this.picture()}
          <span class="side" aria-hidden="true">${words(`view.${this.view}Cap`)}</span>
        </div>
        ${
          this.notice === ''
            ? nothing
            : html`<p class="notice" part="notice">${words(this.notice)}</p>`
        }
        ${stageControls({
          words,
          show: this.still ? 'none' : this.controls,
          heading: said.heading,
          step: this.stepName,
          position: this.position,
          length: this.length,
          playing,
          speed: this.speed,
          view: this.view,
          views: STAGE_VIEWS,
          switches: this.switches,
          play: this.onPlay,
          seek: this.onScrub,
          stepBy: (way) => this.step(way),
          flip: () => this.flip(),
          setSpeed: (speed) => {
            this.speed = speed;
          },
          setView: (view) => {
            this.view = view;
          },
          toggle: (name, on) => {
            this[name] = on;
          },
          key: this.onControlKey,
        })}
        ${this.still ? nothing : this.moves(said)}
      </div>
    `;
  }

  /** The moves in writing, and what a screen reader says of them. */
  private moves(said: StageWords): TemplateResult {
    const { playing, words } = this;
    return html`
        <div class="caption ${this.labelled ? '' : 'short'}" part="caption" aria-hidden="true">
          <slot name="caption">
            <p class="heading">${said.heading}</p>
            ${
              said.moves.length === 0
                ? nothing
                : html`<ol>
                  ${said.moves.map(
                    (move, i) =>
                      html`<li class=${i === said.current ? 'current' : ''}>${move}</li>`,
                  )}
                </ol>`
            }
          </slot>
        </div>
        <p class="said" part="live" aria-live="polite" aria-atomic="true">
          ${playing && !this.calm.matches ? said.saidPlaying : said.said}
        </p>
        ${
          this.controls === 'all'
            ? html`<p class="hint" part="hint" id="hint">
              ${words('hint.drag')}
              <span class="keys">${words('hint.keys', { step: this.stepName })}</span>
            </p>`
            : nothing
        }
    `;
  }

  /** Whether strings are named in the picture. */
  protected get labelled(): boolean {
    return true;
  }

  /** Switches of the menu, and whether each is on: the flat picture cannot be magnified. */
  private get switches(): Readonly<Partial<Record<StageSwitch, boolean>>> {
    const { loop, ghost, trail, magnifier, drawing } = this;
    return { loop, ghost, trail, ...(drawing === 'flat' ? {} : { magnifier }) };
  }

  private picture(): TemplateResult {
    if (this.drawing === 'webgl') {
      return html`<canvas class="threads" part="canvas" aria-hidden="true"></canvas>
        ${
          this.magnifier
            ? html`<canvas class="magnified" part="magnifier" aria-hidden="true"></canvas>`
            : nothing
        }`;
    }
    return html`<svg part="drawing" aria-hidden="true" focusable="false"></svg>
      ${this.drawing === 'waiting' ? html`<slot name="poster"></slot>` : nothing}`;
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
    const loading = this.loadScene();
    // Dealt with below, but perhaps only after it has failed.
    loading.catch(() => undefined);
    try {
      await this.loadPoses();
    } catch {
      if (time !== this.sceneTime) return;
      this.sceneWanted = false;
      this.notice = 'notice.notLoaded';
      return;
    }
    this.redraw();
    try {
      const make = await loading;
      if (time !== this.sceneTime) return;
      const scene = make({
        contextLost: () => {
          this.drawing = 'flat';
          this.notice = 'notice.lost';
        },
        contextRestored: () => {
          this.drawing = 'webgl';
          this.notice = '';
        },
      });
      this.scene = scene;
      const moment = this.momentAt(this.position);
      if (moment !== null) this.poseScene(scene, moment, []);
      await scene.ready();
      if (this.scene !== scene) return;
      this.drawing = 'webgl';
      this.notice = '';
    } catch {
      if (time !== this.sceneTime) return;
      this.drawing = 'flat';
      this.notice = 'notice.noWebgl';
    }
  }

  /** Loads what draws in 3D; a picture of something else than poses has a scene of its own. */
  protected async loadScene(): Promise<(user: ContextUser) => StageScene> {
    const { ThreadScene: Scene } = await import('../webgl/thread-scene.js');
    return (user) => new Scene(user);
  }

  /** Puts what is to be seen into the scene that `loadScene` has made. */
  protected poseScene(scene: StageScene, moment: StageMoment, beside: readonly ThreadLine[]): void {
    (scene as ThreadScene).pose([...moment.lines, ...beside], moment.spotlight ?? null);
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
    if (this.turn.turning) {
      this.turn.pass(passed);
      this.stale = true;
    }
    if (this.stale) {
      this.stale = false;
      this.draw();
    }
    if (this.playing || this.turn.turning) this.wake();
    else this.lastTick = 0;
  }

  private draw(): void {
    const { stage } = this;
    const moment = this.momentAt(this.position);
    if (stage === null || moment === null) return;
    const width = stage.clientWidth;
    const height = stage.clientHeight;
    if (width === 0 || height === 0) return;
    const { yaw, pitch } = this.turn;
    const camera = frameBox(moment.box, { yaw, pitch, aspect: width / height });
    const beside = this.besideLines();
    const canvas = this.renderRoot.querySelector<HTMLCanvasElement>('canvas.threads');
    if (this.scene !== null && canvas !== null && this.drawing === 'webgl') {
      sizeTo(canvas, width, height);
      this.scene.setGround(getComputedStyle(stage).backgroundColor);
      this.poseScene(this.scene, moment, beside);
      this.scene.drawOnto(canvas, camera, reachOf(moment.box));
      this.magnify(moment);
    } else {
      const drawing = this.renderRoot.querySelector<SVGElement>('.stage > svg');
      const { spotlight } = moment;
      const lines = [...moment.lines, ...beside];
      if (drawing !== null) {
        drawFlat(drawing, flatPicture(lines, camera, width, height, spotlight), width, height);
      }
    }
    this.placeLabels(moment, beside, camera, width, height);
  }

  /** The thin lines of the next move and of those before, where they are asked for. */
  protected besideLines(): ThreadLine[] {
    const lines: ThreadLine[] = [];
    const { position } = this;
    const { stops, stills } = this.scoreNow;
    if (this.trail) {
      const began = stops.filter((stop) => stop < position - 1e-6).at(-1) ?? 0;
      const earlier: (readonly ThreadLine[])[] = [];
      for (let k = TRAIL_LINES; k >= 1; k--) {
        const at = position - k * TRAIL_STEP;
        if (at >= began) earlier.push(this.momentAt(at)?.lines ?? []);
      }
      lines.push(...trailOf(earlier));
    }
    const next = stills.find((still) => still > position + 1e-6);
    if (this.ghost && next !== undefined) lines.push(...ghostOf(this.momentAt(next)?.lines ?? []));
    return lines;
  }

  /** Draws what is round the crossing once more, larger, into the corner. */
  private magnify(moment: StageMoment): void {
    const canvas = this.renderRoot.querySelector<HTMLCanvasElement>('canvas.magnified');
    if (canvas === null || moment.crossing === undefined || this.scene === null) return;
    sizeTo(canvas, canvas.clientWidth, canvas.clientHeight);
    const { yaw, pitch } = this.turn;
    const camera = frameBox(moment.box, { yaw, pitch, aspect: 1 });
    const there = { ...camera, target: moment.crossing };
    const across = 2 * camera.distance * Math.tan(FIELD_OF_VIEW / 2);
    const zoom = moment.magnified === undefined ? MAGNIFICATION : across / moment.magnified;
    this.scene.drawOnto(canvas, there, reachOf(moment.box), zoom);
  }

  private placeLabels(
    moment: StageMoment,
    beside: readonly ThreadLine[],
    camera: Camera,
    width: number,
    height: number,
  ): void {
    const { stage } = this;
    if (stage === null) return;
    const placed = this.labelled
      ? labelPlaces([...moment.lines, ...beside], moment.box, camera, width, height)
      : [];
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
      const text =
        'name' in place.label ? place.label.name : this.words(`label.${place.label.does}`);
      if (label.textContent !== text) label.textContent = text;
      const x = place.x - label.offsetWidth * LABEL_SHIFT[place.lies];
      const across = Math.max(4, Math.min(width - label.offsetWidth - 4, x));
      const down = Math.max(6, Math.min(height - label.offsetHeight - 6, place.y));
      label.style.transform = `translate(${across.toFixed(0)}px, ${down.toFixed(0)}px)`;
    });
  }

  private look(yaw: number, pitch: number): void {
    this.turn.by(yaw, pitch);
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

  private readonly onScrub = (position: number): void => {
    if (this.still) return;
    this.pause();
    this.seek(position);
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
    switch (event.key.length === 1 ? event.key.toLowerCase() : event.key) {
      case ' ':
        this.onPlay();
        return true;
      case 'ArrowRight':
        if (this.still) return false;
        if (event.shiftKey) this.stepForward();
        else this.move(1);
        return true;
      case 'ArrowLeft':
        if (this.still) return false;
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
        this.onScrub(0);
        return true;
      case 'End':
        this.onScrub(this.length);
        return true;
      case '0':
        this.turn.to(this.view, this.mirror, this.calm.matches);
        this.redraw();
        return true;
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
    this.onScrub(this.position + by);
  }

  // ---- news ----

  private changed(): void {
    this.requestUpdate();
  }

  private moved(): void {
    this.changed();
    this.redraw();
    this.tellOfKnots();
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

  private tellOfKnots(): void {
    const before = this.knotsDone;
    this.knotsDone = this.knotsDoneAt(this.position);
    // Leaping over many knots tells of the last one only.
    if (this.knotsDone <= before) return;
    const { detail, endsRow } = this.tiedAs(this.knotsDone - 1);
    this.fire('halfhitch-knot', detail);
    if (endsRow) this.fire('halfhitch-row', { row: detail.row, knot: null } satisfies TiedDetail);
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

  private fire(name: string, detail?: StepDetail | TiedDetail): void {
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

function sizeTo(canvas: HTMLCanvasElement, width: number, height: number): void {
  const pixels = Math.min(MOST_PIXELS, window.devicePixelRatio || 1);
  const across = Math.round(width * pixels);
  const down = Math.round(height * pixels);
  if (canvas.width === across && canvas.height === down) return;
  canvas.width = across;
  canvas.height = down;
}

function reachOf(box: Box): number {
  return (
    0.5 * Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1], box.max[2] - box.min[2])
  );
}
