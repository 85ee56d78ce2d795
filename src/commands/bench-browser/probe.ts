/**
 * What runs inside the page. Each is handed over as a function, so it may use nothing but what it is given.
 * A frame's cost is counted from the mouse's move to the first task after the frame was painted: script,
 * style, layout and paint together, waiting for the screen left out.
 */

/** One mark of the drawing as a canvas needs it. */
export interface Mark {
  /** Path data, or a text. */
  readonly d: string;
  readonly text: boolean;
  readonly matrix: readonly [number, number, number, number, number, number];
  readonly fill: string;
  readonly stroke: string;
  readonly width: number;
  readonly dash: readonly number[];
  readonly font: string;
  readonly x: number;
  readonly y: number;
}

export interface Probe {
  readonly frames_ms: number[];
  readonly gaps_ms: number[];
  readonly long_ms: number[];
  readonly geometry: Mark[][];
  /** Changes to the page by what was changed. */
  readonly writes: Record<string, number>;
  recording: boolean;
  stop(): void;
  redraw(): Promise<number[]>;
}

export interface ProbeWindow extends Window {
  probe?: Probe;
}

/** Watches the slider of the page. */
export function watch(): void {
  const page = window as ProbeWindow;
  page.probe?.stop();
  const probe = {
    frames_ms: [] as number[],
    gaps_ms: [] as number[],
    long_ms: [] as number[],
    geometry: [] as Mark[][],
    writes: {} as Record<string, number>,
    recording: false,
  };
  let began: number | undefined;
  let waiting = false;
  let running = true;
  const move = (): void => {
    began ??= performance.now();
  };
  const afterPaint = (then: () => void): void => {
    const channel = new MessageChannel();
    channel.port1.onmessage = then;
    requestAnimationFrame(() => channel.port2.postMessage(0));
  };
  const input = (): void => {
    if (waiting) return;
    waiting = true;
    const from = began ?? performance.now();
    performance.mark('bench-start');
    afterPaint(() => {
      performance.mark('bench-end');
      if (probe.recording) probe.geometry.push(marks());
      else probe.frames_ms.push(performance.now() - from);
      waiting = false;
      began = undefined;
    });
  };
  let last: number | undefined;
  const tick = (now: number): void => {
    if (!running) return;
    if (last !== undefined) probe.gaps_ms.push(now - last);
    last = now;
    requestAnimationFrame(tick);
  };
  const tasks = new PerformanceObserver((list) =>
    list.getEntries().forEach((entry) => probe.long_ms.push(entry.duration)),
  );

  const changes = new MutationObserver((list) => {
    if (!probe.recording) return;
    for (const { target, type, attributeName } of list) {
      const element = (target instanceof Element ? target : target.parentElement) ?? document.body;
      const area = element.closest('figure') ? 'charts' : element.closest('.scene') ? 'scene' : 'page';
      const kind = element.tagName.toLowerCase();
      const name = `${area}, ${kind} ${attributeName ?? (type === 'childList' ? 'children' : 'text')}`;
      probe.writes[name] = (probe.writes[name] ?? 0) + 1;
    }
  });

  function shape(element: Element): string {
    const number = (name: string): number => Number(element.getAttribute(name) ?? 0);
    if (element.tagName === 'path') return element.getAttribute('d') ?? '';
    if (element.tagName === 'line') return `M${number('x1')},${number('y1')}L${number('x2')},${number('y2')}`;
    if (element.tagName === 'rect')
      return `M${number('x')},${number('y')}h${number('width')}v${number('height')}h${-number('width')}z`;
    const r = number('r');
    return `M${number('cx') - r},${number('cy')}a${r},${r} 0 1 0 ${2 * r},0a${r},${r} 0 1 0 ${-2 * r},0z`;
  }
  function marks(): Mark[] {
    const list = document.querySelectorAll<SVGGraphicsElement>(
      ['path', 'line', 'rect', 'circle', 'text'].map((tag) => `main svg ${tag}`).join(),
    );
    return [...list].flatMap((element) => {
      if (element.closest('defs')) return [];
      const style = getComputedStyle(element);
      const own = element.getScreenCTM();
      if (!own || style.display === 'none') return [];
      const text = element.tagName === 'text';
      const paint = (value: string): string => (value.startsWith('url') ? style.color : value);
      return {
        d: text ? (element.textContent ?? '') : shape(element),
        text,
        matrix: [own.a, own.b, own.c, own.d, own.e, own.f] as const,
        fill: paint(style.fill),
        stroke: paint(style.stroke),
        width: parseFloat(style.strokeWidth) || 1,
        dash: style.strokeDasharray === 'none' ? [] : style.strokeDasharray.split(',').map(parseFloat),
        font: style.font,
        x: Number(element.getAttribute('x') ?? 0),
        y: Number(element.getAttribute('y') ?? 0),
      };
    });
  }

  /** Draws every recorded step on one bare canvas, a frame each, and says what each frame took. */
  async function redraw(): Promise<number[]> {
    const canvas = document.createElement('canvas');
    // As large as what is seen: neither draws what lies below the window.
    canvas.width = innerWidth;
    canvas.height = innerHeight;
    canvas.style.cssText = 'position:fixed;inset:0;z-index:9;background:var(--paper)';
    document.body.append(canvas);
    const context = canvas.getContext('2d')!;
    const took: number[] = [];
    const draw = (step: readonly Mark[]): void => {
      context.resetTransform();
      context.clearRect(0, 0, canvas.width, canvas.height);
      for (const mark of step) {
        context.setTransform(...(mark.matrix as [number, number, number, number, number, number]));
        context.lineWidth = mark.width;
        context.setLineDash(mark.dash as number[]);
        context.fillStyle = mark.fill;
        context.strokeStyle = mark.stroke;
        if (mark.text) {
          context.font = mark.font;
          context.fillText(mark.d, mark.x, mark.y);
          continue;
        }
        const path = new Path2D(mark.d);
        if (mark.fill !== 'none') context.fill(path);
        if (mark.stroke !== 'none') context.stroke(path);
      }
    };
    for (const step of probe.geometry)
      await new Promise<void>((done) => {
        requestAnimationFrame(() => {
          const from = performance.now();
          performance.mark('bench-start');
          const channel = new MessageChannel();
          channel.port1.onmessage = () => {
            performance.mark('bench-end');
            took.push(performance.now() - from);
            done();
          };
          draw(step);
          channel.port2.postMessage(0);
        });
      });
    canvas.remove();
    return took;
  }

  page.addEventListener('pointermove', move, { capture: true });
  page.addEventListener('input', input, { capture: true });
  changes.observe(document.body, {
    attributes: true,
    characterData: true,
    childList: true,
    subtree: true,
  });
  tasks.observe({ entryTypes: ['longtask'] });
  requestAnimationFrame(tick);
  page.probe = Object.assign(probe, {
    stop() {
      running = false;
      page.removeEventListener('pointermove', move, { capture: true });
      page.removeEventListener('input', input, { capture: true });
      tasks.disconnect();
      changes.disconnect();
    },
    redraw,
  });
}
