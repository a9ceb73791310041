import {
  LitElement,
  type PropertyDeclarations,
  type PropertyValues,
  type TemplateResult,
} from 'lit';
import { languageOf } from '../messages/catalogue.js';
import { IN_ENGLISH, MESSAGES, type Words } from '../messages/words.js';
import { Player, type Score } from '../playback/player.js';
import { besideAt } from '../stage/beside-lines.js';
import { CameraTurn, STAGE_VIEWS, type StageView } from '../stage/camera-turn.js';
import { STAGE_CONTROLS, type StageControls } from '../stage/controls.js';
import { Frames } from '../stage/frames.js';
import { Handling } from '../stage/handling.js';
import type { StageMoment, StageWords } from '../stage/moment.js';
import { News, type TiedDetail } from '../stage/news.js';
import { paint } from '../stage/paint.js';
import { Preferences } from '../stage/preferences.js';
import { type Drawing, SceneHolder } from '../stage/scene-holder.js';
import { stageStyles } from '../stage/styles.js';
import { stageTemplate } from '../stage/template.js';
import type { ThreadLine } from '../thread/thread-line.js';
import type { ContextUser, StageScene } from '../webgl/stage-scene.js';
import type { ThreadScene } from '../webgl/thread-scene.js';
import { AttributeWarnings } from './attribute-warnings.js';

const NOTHING_PLAYED: Score = { length: 0, stops: [0], stills: [0], secondsAt: () => 1 };
/** More at once would keep the page waiting. */
const MOST_STEPS = 10_000;

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

  protected readonly warnings = new AttributeWarnings(this);
  /** Says messages in the language this element is in. */
  protected words: Words = IN_ENGLISH;
  private language = 'en';
  protected readonly player = new Player(NOTHING_PLAYED, {
    moved: () => this.moved(),
    ended: () => this.ended(),
  });
  private readonly turn = new CameraTurn();
  private readonly preferences = new Preferences(this, () => this.preferred());
  private readonly frames = new Frames(this, {
    player: this.player,
    turn: this.turn,
    draw: () => this.draw(),
    seen: () => void this.scenes.want(),
  });
  private readonly scenes = new SceneHolder(this, {
    loadPoses: () => this.loadPoses(),
    loadScene: () => this.loadScene(),
    posed: () => this.redraw(),
    fill: (scene) => {
      const moment = this.momentAt(this.position);
      if (moment !== null) this.poseScene(scene, moment, []);
    },
    show: (drawing, notice) => {
      this.drawing = drawing;
      this.notice = notice;
    },
  });
  private readonly news = new News(this, this.player, {
    knotsDoneAt: (position) => this.knotsDoneAt(position),
    textAt: (position) => this.wordsAt(position).said,
    tiedAs: (knot) => this.tiedAs(knot),
  });
  private readonly handling = new Handling(this, {
    player: this.player,
    turn: this.turn,
    preferences: this.preferences,
    redraw: () => this.redraw(),
    holding: (on) => {
      this.turning = on;
    },
  });

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
    return this.player.score.length;
  }

  play(): void {
    if (this.playing || this.still) return;
    this.player.speed = this.speed;
    this.player.stills = this.preferences.calm;
    this.player.play();
    this.frames.start();
    this.requestUpdate();
    this.news.fire('halfhitch-play');
  }

  pause(): void {
    if (!this.playing) return;
    this.player.pause();
    this.requestUpdate();
    this.news.fire('halfhitch-pause');
  }

  /** Goes to a position; playing goes on from there. */
  seek(position: number): void {
    this.player.seek(position);
  }

  /** Goes on by some half hitches or steps, or back by as many when `steps` is below 0. */
  step(steps = 1): void {
    this.pause();
    const many = Math.min(MOST_STEPS, Math.abs(Math.trunc(steps) || 0));
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
    this.warnings.spelling();
    void this.updateComplete.then(() => this.frames.watch(this.stage));
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    this.pause();
  }

  protected override willUpdate(changes: PropertyValues<this>): void {
    this.readLanguage();
    if (changes.has('speed')) this.player.speed = this.speed;
    this.player.loop = this.loop;
    this.player.backward = this.backward;
    if (changes.has('controls')) {
      this.warnings.oneOf('controls', this.controls, STAGE_CONTROLS);
      if (!STAGE_CONTROLS.includes(this.controls)) this.controls = 'all';
    }
    if (changes.has('view')) {
      this.warnings.oneOf('view', this.view, STAGE_VIEWS);
      const first = changes.get('view') === undefined;
      if (!STAGE_VIEWS.includes(this.view)) this.view = 'front';
      this.turn.to(this.view, this.mirror, first || this.preferences.calm);
      if (!first) this.news.fire('halfhitch-view');
    }
  }

  protected override updated(): void {
    this.toggleAttribute('playing', this.playing);
    // Not at every frame: only where it comes to rest.
    if (!this.playing) this.setAttribute('position', String(this.position));
    this.redraw();
  }

  private readLanguage(): void {
    const language = MESSAGES.languageFor(languageOf(this));
    if (language === this.language) return;
    this.language = language;
    this.words = MESSAGES.in(language);
  }

  /** Takes over a new score; the position becomes `at`. */
  protected score(score: Score, at: number): void {
    this.player.load(score);
    this.player.seek(at);
    this.news.startHere();
    this.requestUpdate();
  }

  protected override render(): TemplateResult {
    const { words, language, drawing, notice, turning, handling } = this;
    return stageTemplate({
      stage: this,
      handling,
      language,
      words,
      picture: this.pictureName,
      drawing,
      notice,
      turning,
      said: this.wordsAt(this.position),
      brisk: this.playing && !this.preferences.calm,
      short: !this.labelled,
      step: this.stepName,
    });
  }

  /** Whether strings are named in the picture. */
  protected get labelled(): boolean {
    return true;
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

  /** Draws anew at the next frame, whatever may have changed. */
  protected redraw(): void {
    this.frames.redraw();
  }

  /** The thin lines of the next move and of those before, where they are asked for. */
  protected besideLines(): ThreadLine[] {
    const { position, player } = this;
    return besideAt(position, player.score, this, (at) => this.momentAt(at)?.lines ?? []);
  }

  private draw(): void {
    const { stage, words, labelled } = this;
    const moment = this.momentAt(this.position);
    if (stage === null || moment === null) return;
    const beside = this.besideLines();
    paint(stage, {
      moment,
      beside,
      angles: this.turn,
      scene: this.drawing === 'webgl' ? this.scenes.scene : null,
      pose: (scene) => this.poseScene(scene, moment, beside),
      labelled,
      words,
    });
  }

  private moved(): void {
    this.requestUpdate();
    this.redraw();
    this.news.tell();
  }

  private ended(): void {
    this.requestUpdate();
    this.news.fire('halfhitch-end');
  }

  private preferred(): void {
    this.player.stills = this.preferences.calm;
    this.requestUpdate();
    this.redraw();
  }

  private get stage(): HTMLElement | null {
    return this.renderRoot.querySelector<HTMLElement>('.stage');
  }
}
