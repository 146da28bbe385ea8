/** The sheet on the desk: look closer, pick, change in place, drag. */
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { PackedSheet } from '../core/pack.js';
import { pick, useDesk } from '../store/desk.js';
import { useProject } from '../store/project.js';
import { type Camera, fitted, type Point, panned, type Size, toScreen, zoomAt } from './camera.js';
import { EditBox } from './EditBox.js';
import { type Grip, gripAt, gripsOf } from './handles.js';
import { type Hit, hitAt, type Thing, thingsOn } from './hit.js';
import { DARK, LIGHT } from './ink.js';
import { Badges, type Drag, DragNote, GripMark } from './Marks.js';
import { type Painted, repaint } from './repaint.js';
import { ARROWS, step, Things } from './Things.js';
import { useCanvas, useDark } from './useCanvas.js';
import { pointIn, usePointer } from './usePointer.js';

const middle = (s: Size): Point => ({ x: s.w / 2, y: s.h / 2 });

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
  const dark = useDark();

  const grips = useMemo(() => gripsOf(sheet, handles ?? []), [sheet, handles]);
  const things = useMemo(() => thingsOn(sheet), [sheet]);

  const painted = useRef<Painted>(undefined);
  const { size, request } = useCanvas(canvas, (ctx, s, dpr, blank) => {
    if (!camera) {
      painted.current = undefined;
      return;
    }
    const look = { camera, size: s, dpr, ink: dark ? DARK : LIGHT, picked, role: hover?.role };
    painted.current = repaint(ctx, live?.sheet ?? sheet, look, blank ? undefined : painted.current);
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

  const look = useCallback((change: (c: Camera) => Camera): void => {
    touched.current = true;
    setCamera((c) => c && change(c));
  }, []);

  // React listens to the wheel passively; zooming must keep the page from scrolling.
  useEffect(() => {
    const el = canvas.current;
    if (!el) return;
    const wheel = (e: WheelEvent): void => {
      e.preventDefault();
      const p = pointIn(el, e);
      look((c) => {
        if (e.shiftKey) return panned(c, -e.deltaY - e.deltaX, 0);
        if (!e.ctrlKey && e.deltaMode === 0 && Math.abs(e.deltaX) > Math.abs(e.deltaY)) return panned(c, -e.deltaX, 0);
        const lines = e.deltaMode === 1 ? 24 : 1;
        return zoomAt(c, size, p, Math.exp(-e.deltaY * lines * (e.ctrlKey ? 0.01 : 0.0016)));
      });
    };
    el.addEventListener('wheel', wheel, { passive: false });
    return () => el.removeEventListener('wheel', wheel);
  }, [size, look]);

  const choose = (hit: Hit, at: Point): void => {
    if (hit.mark !== undefined) pick(hit.mark);
    setEdit({ hit, at });
  };
  const leave = (): void => {
    setEdit(undefined);
    pick(undefined);
  };
  const pointer = usePointer({
    canvas,
    sheet: sheet.id,
    camera,
    size,
    grips,
    picked,
    look,
    drag: (d) => {
      setDrag(d);
      if (d) setEdit(undefined);
    },
    over: (at, reach) => {
      setHover(hitAt(sheet, at, reach));
      setGrip(gripAt(grips, at, reach));
    },
    ask: (screen, paper, reach) => {
      const hit = hitAt(sheet, paper, reach);
      if (hit) choose(hit, screen);
      else leave();
    },
  });

  const keys = (e: React.KeyboardEvent): void => {
    const way = ARROWS[e.key];
    if (way && e.altKey) grips.some((g) => g.handle.mark === picked && step(g, way, e.shiftKey));
    else if (way) look((c) => panned(c, way.x, way.y));
    else if (e.key === '+' || e.key === '=') look((c) => zoomAt(c, size, middle(size), 1.25));
    else if (e.key === '-') look((c) => zoomAt(c, size, middle(size), 0.8));
    else if (e.key === '0') {
      touched.current = false;
      setCamera(home());
    } else if (e.key === 'Escape') leave();
    else return;
    e.preventDefault();
  };

  const sight = useCallback((p: Point): void => setCamera((c) => c && inSight(c, size, p)), [size]);
  const show = useCallback(
    (t: Thing | undefined): void => {
      setHover(t?.hit);
      if (t) sight(t.at);
    },
    [sight],
  );
  const hold = useCallback(
    (g: Grip | undefined): void => {
      setGrip(g);
      if (g) sight(g.at);
    },
    [sight],
  );
  // Kept as one function for all renders, so that the list of things is not made anew with every move of the pointer.
  const asked = useRef<(t: Thing) => void>(() => {});
  asked.current = (t) => choose(t.hit, camera ? toScreen(camera, size, t.at) : middle(size));
  const ask = useCallback((t: Thing): void => asked.current(t), []);

  return (
    <div className="sheet-view">
      <canvas
        ref={canvas}
        className={grip ? 'over-grip' : hover ? 'over-thing' : ''}
        tabIndex={0}
        aria-label={`Sheet ${sheet.id}, ${sheet.title}. Arrow keys move the paper, plus and minus look closer, 0 shows all of it. Alt with an arrow moves the picked part. The things on it are listed next.`}
        onPointerDown={pointer.down}
        onPointerMove={pointer.move}
        onPointerUp={pointer.up}
        onPointerCancel={pointer.up}
        onPointerLeave={() => setHover(undefined)}
        onDoubleClick={(e) => look((c) => zoomAt(c, size, pointIn(e.currentTarget, e), 2))}
        onKeyDown={keys}
      />
      {camera && !drag && <Badges things={things} camera={camera} size={size} />}
      {camera && drag && <DragNote drag={drag} camera={camera} size={size} />}
      {camera && !drag && grip && <GripMark grip={grip} camera={camera} size={size} />}
      <Things sheet={sheet.id} things={things} grips={grips} show={show} ask={ask} hold={hold} />
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
        <button type="button" aria-label="Look closer" onClick={() => look((c) => zoomAt(c, size, middle(size), 1.4))}>
          +
        </button>
        <button
          type="button"
          aria-label="Step back"
          onClick={() => look((c) => zoomAt(c, size, middle(size), 1 / 1.4))}
        >
          −
        </button>
        <button
          type="button"
          aria-label="Show the whole sheet"
          onClick={() => look(() => fitted(size, [0, 0, sheet.w, sheet.h]))}
        >
          ▭
        </button>
      </div>
    </div>
  );
}

/** Brings a point into the window without changing the scale. */
function inSight(c: Camera, size: Size, p: Point): Camera {
  const s = toScreen(c, size, p);
  const out = s.x < 40 || s.y < 40 || s.x > size.w - 40 || s.y > size.h - 40;
  return out ? { ...c, x: p.x, y: p.y } : c;
}
