import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Takes files that are dropped anywhere on the page. */
export class FileDrop implements ReactiveController {
  /** Whether files are held over the page. */
  over = false;

  constructor(
    private readonly host: ReactiveControllerHost,
    private readonly take: (file: File) => void,
  ) {
    host.addController(this);
  }

  hostConnected(): void {
    addEventListener('dragover', this.onDragOver);
    addEventListener('dragleave', this.onDragLeave);
    addEventListener('drop', this.onDrop);
  }

  hostDisconnected(): void {
    removeEventListener('dragover', this.onDragOver);
    removeEventListener('dragleave', this.onDragLeave);
    removeEventListener('drop', this.onDrop);
  }

  private setOver(over: boolean): void {
    if (over === this.over) return;
    this.over = over;
    this.host.requestUpdate();
  }

  private readonly onDragOver = (event: DragEvent): void => {
    if (!event.dataTransfer?.types.includes('Files')) return;
    event.preventDefault();
    this.setOver(true);
  };

  private readonly onDragLeave = (event: DragEvent): void => {
    if (event.relatedTarget === null) this.setOver(false);
  };

  private readonly onDrop = (event: DragEvent): void => {
    this.setOver(false);
    const file = event.dataTransfer?.files[0];
    if (file === undefined) return;
    event.preventDefault();
    this.take(file);
  };
}
