import type { ProjectSummary } from '../store/listing.js';
import type { Store } from '../store/store.js';
import { thumbnailOf } from './thumbnail.js';

/** Draws the small pictures of projects that have none, or one of an earlier state. */
export class Thumbnails {
  private drawing = false;
  /** Those that could not be drawn or kept are not tried again and again. */
  private readonly tried = new Set<string>();

  /**
   * Draws those of a list one at a time.
   *
   * @param listed the projects in sight, asked for anew before each; null when none are any more
   * @param kept one has been kept
   */
  async draw(
    store: Store,
    listed: () => readonly ProjectSummary[] | null,
    kept: () => Promise<void>,
  ): Promise<void> {
    if (this.drawing) return;
    this.drawing = true;
    for (;;) {
      const stale = listed()?.find(
        (one) => one.thumbnail?.of !== one.changed && !this.tried.has(markOf(one)),
      );
      if (stale === undefined) break;
      this.tried.add(markOf(stale));
      try {
        const { project } = await store.peek(stale.id);
        const image = await thumbnailOf(project);
        if (image !== null) {
          await store.saveThumbnail(stale.id, image, project.changed);
          await kept();
        }
      } catch {
        // The project is listed without a picture.
      }
    }
    this.drawing = false;
  }
}

function markOf({ id, changed }: ProjectSummary): string {
  return `${id} ${changed}`;
}
