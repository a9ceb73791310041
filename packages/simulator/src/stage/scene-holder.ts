import type { ReactiveController, ReactiveControllerHost } from 'lit';
import type { MessageKey } from '../messages/english.js';
import type { ContextUser, StageScene } from '../webgl/stage-scene.js';

/** What a stage shows its picture with. */
export type Drawing = 'waiting' | 'webgl' | 'flat';

/** Why the picture is flat, as a key of the messages. */
export type Notice = '' | Extract<MessageKey, `notice.${string}`>;

/** Where the parts of a picture in 3D come from, and what is told of them. */
export interface ScenePlace {
  /** Loads what poses are made from. */
  loadPoses(): Promise<void>;
  /** Loads what draws in 3D. */
  loadScene(): Promise<(user: ContextUser) => StageScene>;
  /** Poses are there: the flat picture can be drawn. */
  posed(): void;
  /** Puts into a new scene what is to be seen at first. */
  fill(scene: StageScene): void;
  show(drawing: Drawing, notice: Notice): void;
}

/** Loads the 3D part when it is first needed; the flat picture stands in until then. */
export class SceneHolder implements ReactiveController {
  private held: StageScene | null = null;
  private wanted = false;
  /** Grows whenever the scene is let go: what was on its way for an earlier time is dropped. */
  private time = 0;
  private readonly place: ScenePlace;

  constructor(host: ReactiveControllerHost, place: ScenePlace) {
    this.place = place;
    host.addController(this);
  }

  get scene(): StageScene | null {
    return this.held;
  }

  hostDisconnected(): void {
    this.wanted = false;
    this.time++;
    this.held?.dispose();
    this.held = null;
    this.place.show('waiting', '');
  }

  async want(): Promise<void> {
    if (this.wanted) return;
    this.wanted = true;
    const { time, place } = this;
    const loading = place.loadScene();
    // Dealt with below, but perhaps only after it has failed.
    loading.catch(() => undefined);
    try {
      await place.loadPoses();
    } catch {
      if (time !== this.time) return;
      this.wanted = false;
      place.show('waiting', 'notice.notLoaded');
      return;
    }
    place.posed();
    try {
      const make = await loading;
      if (time !== this.time) return;
      const scene = make({
        contextLost: () => place.show('flat', 'notice.lost'),
        contextRestored: () => place.show('webgl', ''),
      });
      this.held = scene;
      place.fill(scene);
      await scene.ready();
      if (this.held === scene) place.show('webgl', '');
    } catch {
      if (time === this.time) place.show('flat', 'notice.noWebgl');
    }
  }
}
