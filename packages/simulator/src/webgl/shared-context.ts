import { NoToneMapping, PCFShadowMap, WebGLRenderer } from 'three';
import type { ContextUser } from './stage-scene.js';

const users = new Set<ContextUser>();
let renderer: WebGLRenderer | null = null;
let lost = false;

const onLost = (event: Event): void => {
  // Without this the browser never gives the context back.
  event.preventDefault();
  lost = true;
  for (const user of users) user.contextLost();
};

const onRestored = (): void => {
  lost = false;
  for (const user of users) user.contextRestored();
};

/**
 * Joins the one WebGL context that all elements of a page draw with; browsers allow only some
 * sixteen. Each element copies its picture from it onto a canvas of its own.
 *
 * @throws Error when the browser gives no WebGL 2 context
 */
export function joinContext(user: ContextUser): void {
  if (renderer === null) {
    const canvas = document.createElement('canvas');
    // Asked for here, since three reports a refusal on the console as well as throwing.
    const context = canvas.getContext('webgl2', {
      alpha: true,
      antialias: true,
      powerPreference: 'low-power',
    });
    if (context === null) throw new Error('The browser gives no WebGL 2 context.');
    const made = new WebGLRenderer({ canvas, context, alpha: true, antialias: true });
    made.toneMapping = NoToneMapping;
    made.shadowMap.enabled = true;
    made.shadowMap.type = PCFShadowMap;
    // Asking for errors makes the page wait for each program.
    made.debug.checkShaderErrors = false;
    made.setPixelRatio(1);
    made.setClearColor(0x000000, 0);
    canvas.addEventListener('webglcontextlost', onLost);
    canvas.addEventListener('webglcontextrestored', onRestored);
    renderer = made;
    lost = context.isContextLost();
  }
  users.add(user);
}

/** Leaves the context; the last one out gives it back to the browser. */
export function leaveContext(user: ContextUser): void {
  if (!users.delete(user) || users.size > 0 || renderer === null) return;
  const canvas = renderer.domElement;
  canvas.removeEventListener('webglcontextlost', onLost);
  canvas.removeEventListener('webglcontextrestored', onRestored);
  renderer.dispose();
  renderer.forceContextLoss();
  canvas.width = 0;
  canvas.height = 0;
  renderer = null;
  lost = false;
}

/** The context to draw with, or null while there is none or it is lost. */
export function sharedRenderer(): WebGLRenderer | null {
  return lost ? null : renderer;
}

/** How many contexts this page holds and how many elements draw with them. */
export function contextCensus(): { readonly contexts: number; readonly users: number } {
  return { contexts: renderer === null ? 0 : 1, users: users.size };
}
