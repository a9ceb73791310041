/** What can be heard: whether there is a voice, and if not, why. */
export type VoiceState =
  | 'ready'
  /** The browser has no speech. */
  | 'none'
  /** It has, but no voice is installed that speaks on this device. */
  | 'no-voice'
  /** It was asked to speak, and would not. */
  | 'failed';

/** Browsers list their voices a little after they are asked for them, ms. */
const PATIENCE = 2_000;

/**
 * Says things aloud through the browser's Web Speech, with voices of the device alone: others send
 * what they say to a server.
 */
export class Voice extends EventTarget {
  rate = 1;
  private current: VoiceState = 'ready';
  private chosen: SpeechSynthesisVoice | null = null;

  private get speech(): SpeechSynthesis | null {
    return typeof speechSynthesis === 'undefined' ? null : speechSynthesis;
  }

  get state(): VoiceState {
    return this.current;
  }

  /** Finds a voice. Fires `state` when it is known whether there is one. */
  async start(): Promise<void> {
    const { speech } = this;
    if (speech === null) return this.become('none');
    if (speech.getVoices().length === 0) {
      await new Promise<void>((resolve) => {
        const timer = setTimeout(resolve, PATIENCE);
        speech.addEventListener(
          'voiceschanged',
          () => {
            clearTimeout(timer);
            resolve();
          },
          { once: true },
        );
      });
    }
    const english = speech
      .getVoices()
      .filter(({ localService, lang }) => localService && /^en\b/i.test(lang));
    this.chosen = english.find(({ lang }) => /^en[-_]GB/i.test(lang)) ?? english[0] ?? null;
    this.become(this.chosen === null ? 'no-voice' : 'ready');
  }

  /** Says something in place of whatever is being said. */
  say(text: string): void {
    const { speech, chosen } = this;
    if (speech === null || chosen === null) return;
    speech.cancel();
    const utterance = new SpeechSynthesisUtterance(text);
    utterance.voice = chosen;
    utterance.lang = chosen.lang;
    utterance.rate = this.rate;
    utterance.addEventListener('error', ({ error }) => {
      if (error !== 'interrupted' && error !== 'canceled') this.become('failed');
    });
    utterance.addEventListener('start', () => this.become('ready'));
    speech.speak(utterance);
  }

  hush(): void {
    this.speech?.cancel();
  }

  private become(state: VoiceState): void {
    if (state === this.current) return;
    this.current = state;
    this.dispatchEvent(new Event('state'));
  }
}

export function voiceInWords(state: VoiceState): string {
  switch (state) {
    case 'ready':
      return '';
    case 'none':
      return 'This browser cannot speak, so nothing is said aloud. All else works as it does.';
    case 'no-voice':
      return 'No English voice is installed on this device, so nothing is said aloud. Voices that work over the network are not used.';
    case 'failed':
      return 'The browser did not speak. Tap “Say it again”, and check the volume of the device.';
  }
}
