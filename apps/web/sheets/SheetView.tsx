/** The sheet on the desk: look closer, pick, change in place, drag. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { formatLength } from '../../../src/index.js';
import type { PackedSheet } from '../core/pack.js';
import { pick, useDesk } from '../store/desk.js';
import { dragTo, drop, useProject } from '../store/project.js';
import { type Camera, fitted, type Point, panned, snapStep, toPaper, toScreen, zoomAt } from './camera.js';
import { EditBox } from './EditBox.js';
import { type Grip, gripAt, gripsOf, snapped } from './handles.js';
import { type Hit, hitAt, thingsOn } from './hit.js';
import { DARK, LIGHT } from './ink.js';
import { paint } from './paint.js';
import { useCanvas, useDark } from './useCanvas.js';

interface Drag {
  readonly grip: Grip;
  readonly from: Point;
  readonly by: number;
}

/** How far an arrow key moves the paper, pixels. */
const PANS: Readonly<Record<string, Point>> = {
  ArrowLeft: { x: 60, y: 0 },
  ArrowRight: { x: -60, y: 0 },
  ArrowUp: { x: 0, y: 60 },
  ArrowDown: { x: 0, y: -60 },
};

/** Reach of a pointer on the screen, pixels: fingers need more room. */
const reachOf = (type: string): number => (type === 'mouse' ? 7 : 22);

const pointIn = (el: Element, e: { clientX: number; clientY: number }): Point => {
  const r = el.getBoundingClientRect();
  return { x: e.clientX - r.left, y: e.clientY - r.top };
};

export function SheetView({ sheet }: { readonly sheet: PackedSheet }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [camera, setCamera] = useState<Camera>();
  const [hover, setHover] = useState<Hit>();
  const [edit, setEdit] = useState<{ hit: Hit; at: Point }>();
  const [drag, setDrag] = useState<Drag>();
  const [grip, setGrip] = useState<Grip>();
  const picked = useDesk((d) => d.picked);
  const handles = useProject((p) => p.summary?.handles);
  const live = useProject((p) => p.live);
  const units = useProject((p) => p.summary?.units ?? 'us');
  const dark = useDark();
  const pointers = useRef(new Map<number, Point>());
  const pressed = useRef<{ at: Point; moved: boolean; pinch?: number; grip?: Grip }>(undefined);
  const dragging = useRef<Drag>(undefined);

  const shown = live?.sheet ?? sheet;
  const grips = useMemo(() => gripsOf(sheet, handles ?? []), [sheet, handles]);
  const things = useMemo(() => thingsOn(sheet), [sheet]);

  const { size, request } = useCanvas(canvas, (ctx, s, dpr) => {
    if (!camera) return;
    const ink = dark ? DARK : LIGHT;
    paint(ctx, shown, { camera, size: s, dpr, ink, picked, role: hover?.role });
  });
  useEffect(request);

  // The whole sheet on a wide screen; on a small one the drawing itself, without margins and title block.
  const home = useCallback((): Camera => {
    const main = sheet.views[0];
    const narrow = size.w < 700 && main;
    return fitted(size, narrow ? main.box : [0, 0, sheet.w, sheet.h], narrow ? 20 : 12);
  }, [sheet, size]);
  const known = useRef('');
  const touched = useRef(false);
  useEffect(() => {
    if (size.w === 0) return;
    const key = `${sheet.id} ${sheet.w}`;
    if (known.current !== key) touched.current = false;
    // A window that changes its size shows what it showed, unless nobody has looked closer yet.
    if (touched.current) return;
    setCamera(home());
    if (known.current === key) return;
    known.current = key;
    setEdit(undefined);
    setHover(undefined);
  }, [sheet.id, sheet.w, size, home]);

  const at = (e: { clientX: number; clientY: number }): Point => pointIn(canvas.current!, e);
  const paperAt = (p: Point): Point => toPaper(camera!, size, p);

  // React listens to the wheel passively; zooming must keep the page from scrolling.
  useEffect(() => {
    const el = canvas.current;
    if (!el) return;
    const wheel = (e: WheelEvent): void => {
      e.preventDefault();
      const p = pointIn(el, e);
      touched.current = true;
      setCamera((c) => {
        if (!c) return c;
        if (e.shiftKey) return panned(c, -e.deltaY - e.deltaX, 0);
        if (!e.ctrlKey && e.deltaMode === 0 && Math.abs(e.deltaX) > Math.abs(e.deltaY)) return panned(c, -e.deltaX, 0);
        const lines = e.deltaMode === 1 ? 24 : 1;
        return zoomAt(c, size, p, Math.exp(-e.deltaY * lines * (e.ctrlKey ? 0.01 : 0.0016)));
      });
    };
    el.addEventListener('wheel', wheel, { passive: false });
    return () => el.removeEventListener('wheel', wheel);
  }, [size]);

  const choose = (hit: Hit, p: Point): void => {
    if (hit.mark !== undefined) pick(hit.mark);
    setEdit({ hit, at: p });
  };

  const down = (e: React.PointerEvent): void => {
    if (!camera) return;
    canvas.current!.setPointerCapture(e.pointerId);
    const p = at(e);
    pointers.current.set(e.pointerId, p);
    if (pointers.current.size === 2) {
      const [a, b] = [...pointers.current.values()] as [Point, Point];
      pressed.current = { at: p, moved: true, pinch: Math.hypot(a.x - b.x, a.y - b.y) };
      return;
    }
    const g = gripAt(grips, paperAt(p), reachOf(e.pointerType) / camera.zoom);
    // A finger drags only what it has picked before, so that moving the paper moves nothing else.
    const mine = g && (e.pointerType === 'mouse' || g.handle.mark === picked) ? g : undefined;
    pressed.current = { at: p, moved: false, ...(mine ? { grip: mine } : {}) };
  };

  const move = (e: React.PointerEvent): void => {
    if (!camera) return;
    const p = at(e);
    const was = pointers.current.get(e.pointerId);
    if (was) pointers.current.set(e.pointerId, p);
    const press = pressed.current;
    if (!press || !was) {
      const q = paperAt(p);
      setHover(hitAt(sheet, q, reachOf('mouse') / camera.zoom));
      setGrip(gripAt(grips, q, reachOf('mouse') / camera.zoom));
      return;
    }
    if (press.pinch !== undefined && pointers.current.size === 2) {
      const [a, b] = [...pointers.current.values()] as [Point, Point];
      const spread = Math.hypot(a.x - b.x, a.y - b.y);
      const mid = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
      setCamera((c) => c && panned(zoomAt(c, size, mid, spread / press.pinch!), (p.x - was.x) / 2, (p.y - was.y) / 2));
      press.pinch = spread;
      return;
    }
    if (!press.moved && Math.hypot(p.x - press.at.x, p.y - press.at.y) < (e.pointerType === 'mouse' ? 4 : 9)) return;
    press.moved = true;
    touched.current = true;
    if (press.grip) {
      const step = snapStep(camera.zoom * press.grip.view.scale, e.shiftKey);
      const by = snapped(press.grip, paperAt(press.at), paperAt(p), step);
      if (by === dragging.current?.by) return;
      const next = { grip: press.grip, from: press.at, by };
      dragging.current = next;
      setDrag(next);
      setEdit(undefined);
      void dragTo(press.grip.handle.id, by, sheet.id);
    } else setCamera((c) => c && panned(c, p.x - was.x, p.y - was.y));
  };

  const up = (e: React.PointerEvent): void => {
    pointers.current.delete(e.pointerId);
    const press = pressed.current;
    if (pointers.current.size > 0) return;
    pressed.current = undefined;
    const d = dragging.current;
    dragging.current = undefined;
    setDrag(undefined);
    if (d && e.type !== 'pointercancel') {
      pick(d.grip.handle.mark);
      void drop(d.grip.handle.id, d.by, `${d.grip.handle.mark} moved`);
      return;
    }
    if (!press || press.moved || !camera || e.type === 'pointercancel') return;
    const p = at(e);
    const hit = hitAt(sheet, paperAt(p), reachOf(e.pointerType) / camera.zoom);
    if (hit) choose(hit, p);
    else {
      setEdit(undefined);
      pick(undefined);
    }
  };

  const keys = (e: React.KeyboardEvent): void => {
    if (!camera) return;
    touched.current = true;
    const pan = PANS[e.key];
    const middle = { x: size.w / 2, y: size.h / 2 };
    if (pan && e.altKey) nudge(e, pan);
    else if (pan) setCamera(panned(camera, pan.x, pan.y));
    else if (e.key === '+' || e.key === '=') setCamera(zoomAt(camera, size, middle, 1.25));
    else if (e.key === '-') setCamera(zoomAt(camera, size, middle, 0.8));
    else if (e.key === '0') {
      touched.current = false;
      setCamera(home());
    } else if (e.key === 'Escape') {
      setEdit(undefined);
      pick(undefined);
    } else return;
    e.preventDefault();
  };

  /** Moves a grip by one step for an arrow key, for hands that use no pointer. */
  const step = (g: Grip, e: React.KeyboardEvent, pan: Point): void => {
    const across = g.handle.axis.y * pan.y - g.handle.axis.x * pan.x;
    if (Math.abs(across) < 1) return;
    void drop(g.handle.id, Math.sign(across) * (e.shiftKey ? 0.5 : 1), `${g.handle.mark} moved`);
  };
  const nudge = (e: React.KeyboardEvent, pan: Point): void => {
    const g = grips.find(
      (x) => x.handle.mark === picked && Math.abs(x.handle.axis.y * pan.y - x.handle.axis.x * pan.x) > 1,
    );
    if (g) step(g, e, pan);
  };

  const closer = (factor: number): void => {
    touched.current = true;
    setCamera((c) => c && zoomAt(c, size, { x: size.w / 2, y: size.h / 2 }, factor));
  };

  const length = (inches: number): string => formatLength(inches, { units, glyphs: true });
  const moving = drag && camera ? toScreen(camera, size, drag.grip.at) : undefined;

  return (
    <div className="sheet-view">
      <canvas
        ref={canvas}
        className={grip ? 'over-grip' : hover ? 'over-thing' : ''}
        tabIndex={0}
        aria-label={`Sheet ${sheet.id}, ${sheet.title}. Arrow keys move the paper, plus and minus look closer, 0 shows all of it. Alt with an arrow moves the picked part. The things on it are listed next.`}
        onPointerDown={down}
        onPointerMove={move}
        onPointerUp={up}
        onPointerCancel={up}
        onPointerLeave={() => setHover(undefined)}
        onDoubleClick={(e) => setCamera((c) => c && zoomAt(c, size, at(e), 2))}
        onKeyDown={keys}
      />
      {drag && moving && (
        <output className="drag-note" style={{ left: moving.x, top: moving.y }}>
          <b>{length(drag.grip.handle.value + drag.by)}</b> {drag.grip.handle.from}
          <span>{live?.issue ?? verdict(live)}</span>
        </output>
      )}
      {!drag && grip && camera && <GripMark grip={grip} camera={camera} size={size} />}
      <nav className="sheet-things" aria-label={`Things on sheet ${sheet.id}`}>
        {things.map((t) => (
          <button
            type="button"
            key={`${t.label}${t.hit.item}`}
            onFocus={() => {
              setHover(t.hit);
              setCamera((c) => c && inSight(c, size, t.at));
            }}
            onClick={() => choose(t.hit, camera ? toScreen(camera, size, t.at) : { x: 0, y: 0 })}
          >
            {t.label}
          </button>
        ))}
        {grips.map((g) => (
          <button
            type="button"
            key={g.handle.id}
            onFocus={() => {
              setGrip(g);
              pick(g.handle.mark);
              setCamera((c) => c && inSight(c, size, g.at));
            }}
            onBlur={() => setGrip(undefined)}
            onKeyDown={(e) => {
              const pan = PANS[e.key];
              if (!pan) return;
              step(g, e, pan);
              e.preventDefault();
            }}
          >
            Move {g.handle.what} (arrow keys)
          </button>
        ))}
      </nav>
      {edit && (
        <EditBox
          key={edit.hit.item}
          sheet={sheet}
          hit={edit.hit}
          at={edit.at}
          room={size}
          close={() => {
            setEdit(undefined);
            canvas.current?.focus();
          }}
        />
      )}
      <div className="zoom-keys">
        <button type="button" aria-label="Look closer" onClick={() => closer(1.4)}>
          +
        </button>
        <button type="button" aria-label="Step back" onClick={() => closer(1 / 1.4)}>
          −
        </button>
        <button
          type="button"
          aria-label="Show the whole sheet"
          onClick={() => setCamera(fitted(size, [0, 0, sheet.w, sheet.h]))}
        >
          ▭
        </button>
      </div>
    </div>
  );
}

function verdict(
  live:
    | { failing: readonly string[]; nearest: { title: string; subject: string; ratio: number } | undefined }
    | undefined,
): string {
  if (!live) return '';
  if (live.failing.length > 0)
    return `Fails: ${live.failing.slice(0, 2).join(', ')}${live.failing.length > 2 ? ` and ${live.failing.length - 2} more` : ''}`;
  const n = live.nearest;
  return n ? `Passes; nearest ${n.title} ${n.subject} at ${Math.round(n.ratio * 100)} %` : '';
}

/** Brings a point into the window without changing the scale. */
function inSight(c: Camera, size: { w: number; h: number }, p: Point): Camera {
  const s = toScreen(c, size, p);
  const out = s.x < 40 || s.y < 40 || s.x > size.w - 40 || s.y > size.h - 40;
  return out ? { ...c, x: p.x, y: p.y } : c;
}

function GripMark({
  grip,
  camera,
  size,
}: {
  readonly grip: Grip;
  readonly camera: Camera;
  readonly size: { w: number; h: number };
}) {
  const middle = grip.to ? { x: (grip.at.x + grip.to.x) / 2, y: (grip.at.y + grip.to.y) / 2 } : grip.at;
  const p = toScreen(camera, size, middle);
  const turn = Math.round((Math.atan2(-grip.handle.axis.y, grip.handle.axis.x) * 180) / Math.PI);
  return (
    <div className="grip" style={{ left: p.x, top: p.y }} aria-hidden="true">
      <svg width="44" height="44" viewBox="-22 -22 44 44" style={{ transform: `rotate(${turn}deg)` }}>
        <title>moves this way</title>
        <path d="M-20 0l7-5v10zM20 0l-7-5v10z" />
      </svg>
      <span>{grip.handle.what}</span>
    </div>
  );
}
