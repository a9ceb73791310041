/** What a player plays: a stretch of positions with stops in it. */
export interface Score {
  /** Positions run from 0 to this. */
  readonly length: number;
  /** Positions at which a step begins or ends, in order, with both ends. */
  readonly stops: readonly number[];
  /** Positions shown one after another where motion is not wanted, in order, with both ends. */
  readonly stills: readonly number[];
  /** Seconds that the step holding a position lasts at speed 1. */
  readonly secondsAt: (position: number) => number;
}

export interface PlayerEvents {
  readonly moved: (position: number) => void;
  readonly ended: () => void;
}

/** Seconds for which a still is held at speed 1. */
const STILL_SECONDS = 1.8;
const MOST_SPEED = 8;
/** A page that slept must not make the playing leap. */
const LONGEST_TICK = 0.1;

/**
 * A position that can be played, apart from any picture and any clock: `tick` is told how much
 * time has passed.
 */
export class Player {
  private pace = 1;
  /** Whether to go from still to still, instead of moving. */
  stills = false;
  /** Whether the step that holds the position is played again and again. */
  loop = false;
  /** Whether it plays from the end to the beginning, as work is undone. */
  backward = false;
  private loaded: Score;
  private readonly events: PlayerEvents;
  private at = 0;
  private running = false;
  private held = 0;

  constructor(score: Score, events: PlayerEvents) {
    this.loaded = score;
    this.events = events;
  }

  get speed(): number {
    return this.pace;
  }
  /** 1 is steady; what is no speed is taken as that. */
  set speed(speed: number) {
    this.pace = Number.isFinite(speed) && speed > 0 ? Math.min(MOST_SPEED, speed) : 1;
  }

  get position(): number {
    return this.at;
  }

  /** What is played. */
  get score(): Score {
    return this.loaded;
  }

  /** How many steps are done at the position. */
  get done(): number {
    let done = -1;
    for (const stop of this.loaded.stops) {
      if (stop > this.at + 1e-6) break;
      done++;
    }
    return Math.max(0, done);
  }

  get playing(): boolean {
    return this.running;
  }

  /** Plays something else from now on, as far as that allows from the position reached. */
  load(score: Score): void {
    this.loaded = score;
    this.seek(this.at);
  }

  play(): void {
    if (this.loaded.length <= 0) return;
    if (this.atEnd) this.moveTo(this.backward ? this.loaded.length : 0);
    this.held = 0;
    this.running = true;
  }

  pause(): void {
    this.running = false;
  }

  seek(position: number): void {
    this.held = 0;
    this.moveTo(position);
  }

  /** To the next stop after the position, or the last one before it. */
  step(way: 1 | -1): void {
    this.seek(this.beyond(this.loaded.stops, way));
  }

  /** To the next still after the position, or the last one before it. */
  move(way: 1 | -1): void {
    this.seek(this.beyond(this.loaded.stills, way));
  }

  /** Lets time pass, in seconds. */
  tick(seconds: number): void {
    if (!this.running) return;
    const passed = Math.min(LONGEST_TICK, Math.max(0, seconds)) * this.pace;
    const way = this.backward ? -1 : 1;
    let next: number;
    if (this.stills) {
      this.held += passed;
      if (this.held < STILL_SECONDS) return;
      this.held = 0;
      next = this.beyond(this.loaded.stills, way);
    } else {
      next = this.at + (way * passed) / Math.max(0.05, this.loaded.secondsAt(this.at));
    }
    if (this.loop) {
      this.moveTo(this.looped(next));
      return;
    }
    this.moveTo(next);
    if (this.atEnd) {
      this.running = false;
      this.events.ended();
    }
  }

  private get atEnd(): boolean {
    return this.backward ? this.at <= 0 : this.at >= this.loaded.length;
  }

  /** Where the position goes when it would leave the step it is in: that step's other end. */
  private looped(next: number): number {
    const { stops, length } = this.loaded;
    let from = 0;
    let to = length;
    for (let i = 1; i < stops.length; i++) {
      const begins = stops[i - 1] as number;
      const ends = stops[i] as number;
      // On a stop, playing goes on into the step ahead; the last step has nothing ahead.
      const within = this.backward
        ? this.at > begins + 1e-9 && this.at <= ends + 1e-9
        : this.at >= begins - 1e-9 && this.at < ends - 1e-9;
      if (!within) continue;
      from = begins;
      to = ends;
    }
    if (next >= to - 1e-9 && !this.backward) return from;
    if (next <= from + 1e-9 && this.backward) return to;
    return next;
  }

  private beyond(places: readonly number[], way: 1 | -1): number {
    if (way > 0) return places.find((place) => place > this.at + 1e-6) ?? this.loaded.length;
    let before = 0;
    for (const place of places) {
      if (place >= this.at - 1e-6) break;
      before = place;
    }
    return before;
  }

  private moveTo(position: number): void {
    const wanted = Number.isFinite(position) ? position : 0;
    const next = Math.min(this.loaded.length, Math.max(0, wanted));
    if (next === this.at) return;
    this.at = next;
    this.events.moved(next);
  }
}
