import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { Store } from '../store/store.js';
import { Awake, type AwakeState } from './awake.js';
import { BreakClock } from './break-clock.js';
import { type TieSettings, tieSettingsFrom, USUAL_TIE_SETTINGS } from './settings.js';
import { Voice, type VoiceState } from './voice.js';

const SETTINGS = 'tie';

/**
 * What the maker wants while tying, kept on this device, and what does it without a hand: the voice,
 * the screen that stays on, the call to rest.
 */
export class HandsFree implements ReactiveController {
  readonly rests = new BreakClock(USUAL_TIE_SETTINGS.rest);
  private readonly voice = new Voice();
  private readonly awake = new Awake();
  private current = USUAL_TIE_SETTINGS;
  private store: Store | null = null;

  /** @param heard the voice was switched on, and has been found or not */
  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly heard: () => void,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    this.voice.addEventListener('state', this.redraw);
    this.awake.addEventListener('state', this.redraw);
  }

  hostDisconnected(): void {
    this.voice.removeEventListener('state', this.redraw);
    this.awake.removeEventListener('state', this.redraw);
    this.voice.hush();
    this.awake.set(false);
  }

  private readonly redraw = (): void => this.host.requestUpdate();

  get settings(): TieSettings {
    return this.current;
  }

  get voiceState(): VoiceState {
    return this.voice.state;
  }

  get awakeState(): AwakeState {
    return this.awake.state;
  }

  /** Settings as they were kept, once `wanted` still says that they are wanted. */
  async begin(store: Store, wanted: () => boolean): Promise<void> {
    this.store = store;
    const kept = await store.setting(SETTINGS).catch(() => undefined);
    if (wanted()) this.apply(tieSettingsFrom(kept));
  }

  set(change: Partial<TieSettings>): void {
    this.apply({ ...this.current, ...change });
    this.store?.keepSetting(SETTINGS, this.current).catch(() => {
      // They hold for this visit only.
    });
  }

  private apply(settings: TieSettings): void {
    const heard = settings.voice && !this.current.voice;
    this.current = settings;
    this.rests.every = settings.rest;
    this.voice.rate = settings.rate;
    this.awake.set(settings.awake);
    if (!settings.voice) this.voice.hush();
    else if (heard) void this.voice.start().then(this.heard);
    this.redraw();
  }

  /** Says something, if that is wanted. */
  say(text: string): void {
    if (this.current.voice) this.voice.say(text);
  }

  /** The maker has done something: a screen that could not be kept on may be now. */
  touched(): void {
    this.awake.retry();
  }
}
