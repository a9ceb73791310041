// What a page holds, as the browser itself counts it.

/**
 * Put into a page before its own scripts: counts the WebGL contexts they are given, and what of
 * buffers, textures, programs and the like is made in them and not given back.
 */
export function countGraphics() {
  const kinds = {
    Buffer: 'buffers',
    Texture: 'textures',
    Program: 'programs',
    Shader: 'shaders',
    Framebuffer: 'framebuffers',
    Renderbuffer: 'renderbuffers',
    VertexArray: 'vertexArrays',
  };
  const contexts = [];
  const liveOf = new WeakMap();
  const live = (context) => {
    let counts = liveOf.get(context);
    if (counts === undefined) {
      counts = {};
      liveOf.set(context, counts);
    }
    return counts;
  };
  const prototype = WebGL2RenderingContext.prototype;
  for (const [kind, name] of Object.entries(kinds)) {
    const make = prototype[`create${kind}`];
    prototype[`create${kind}`] = function (...given) {
      const made = make.apply(this, given);
      if (made !== null) live(this)[name] = (live(this)[name] ?? 0) + 1;
      return made;
    };
    const remove = prototype[`delete${kind}`];
    prototype[`delete${kind}`] = function (thing) {
      // Of what was lost with its context nothing is given back any more.
      if (thing !== null && thing !== undefined && !this.isContextLost()) live(this)[name] -= 1;
      return remove.call(this, thing);
    };
  }
  const get = HTMLCanvasElement.prototype.getContext;
  HTMLCanvasElement.prototype.getContext = function (...given) {
    const context = get.apply(this, given);
    if (
      context instanceof WebGL2RenderingContext &&
      !contexts.some((one) => one.deref() === context)
    ) {
      contexts.push(new WeakRef(context));
      this.addEventListener('webglcontextrestored', () => liveOf.delete(context));
    }
    return context;
  };
  const alive = () =>
    contexts.map((one) => one.deref()).filter((one) => one !== undefined && !one.isContextLost());
  Object.assign(window, {
    graphics: {
      loseOne() {
        const extension = alive().at(-1)?.getExtension('WEBGL_lose_context') ?? null;
        extension?.loseContext();
        return extension;
      },
      census() {
        const counts = { contexts: alive().length, contextsMade: contexts.length };
        for (const name of Object.values(kinds)) {
          counts[name] = alive().reduce((sum, context) => sum + (live(context)[name] ?? 0), 0);
        }
        return counts;
      },
    },
  });
}

/**
 * Everything that may leak, after a thorough collection of garbage: bytes of the heap, nodes and
 * listeners that are alive, graphics.
 */
export async function census(session, page) {
  for (let i = 0; i < 3; i++) {
    await session.send('HeapProfiler.collectGarbage');
    await page.waitForTimeout(60);
  }
  const { metrics } = await session.send('Performance.getMetrics');
  const metric = (name) => metrics.find((one) => one.name === name)?.value ?? 0;
  const { nodes, jsEventListeners, documents } = await session.send('Memory.getDOMCounters');
  const graphics = await page.evaluate(() => window.graphics.census());
  return {
    heap: metric('JSHeapUsedSize'),
    nodes,
    listeners: jsEventListeners,
    documents,
    ...graphics,
  };
}

/** How much more of something there may be at the end than after the warm-up. */
const ALLOWED = {
  heap: { factor: 1.1, more: 1_000_000 },
  nodes: { factor: 1.02, more: 50 },
  listeners: { factor: 1.02, more: 20 },
  documents: { factor: 1, more: 0 },
  contexts: { factor: 1, more: 0 },
  buffers: { factor: 1, more: 0 },
  textures: { factor: 1, more: 0 },
  programs: { factor: 1, more: 0 },
  shaders: { factor: 1, more: 0 },
  framebuffers: { factor: 1, more: 0 },
  renderbuffers: { factor: 1, more: 0 },
  vertexArrays: { factor: 1, more: 0 },
};

/** What has grown by more than it may, in words; empty when all is well. */
export function growth(warm, end) {
  return Object.entries(ALLOWED).flatMap(([name, { factor, more }]) => {
    const most = Math.max(warm[name] * factor, warm[name] + more);
    return end[name] <= most
      ? []
      : [`${name} grew from ${figure(name, warm[name])} to ${figure(name, end[name])}`];
  });
}

export function figure(name, value) {
  return name === 'heap' ? `${(value / 1e6).toFixed(2)} MB` : String(value);
}

/** A line of a table of censuses. */
export function line(rounds, taken) {
  const shown = ['heap', 'nodes', 'listeners', 'contexts', 'buffers', 'textures', 'programs'];
  return `${String(rounds).padStart(7)}  ${shown
    .map((name) => `${name} ${figure(name, taken[name])}`)
    .join(', ')}`;
}
