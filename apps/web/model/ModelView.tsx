/** The model in the round: turn it, cut it, see what is new, and what the load does. */
import { useEffect, useRef, useState } from 'react';
import type { SceneState } from '../../../src/index.js';
import { thorough } from '../core/client.js';
import { useDark } from '../sheets/useCanvas.js';
import { openPanel, pick, useDesk } from '../store/desk.js';
import { textNow, useProject } from '../store/project.js';
import { layOver, type Shown } from './overlay.js';
import { type Axis, type Colours, Stage, type ViewName } from './stage.js';

const VIEWS: readonly (readonly [ViewName, string])[] = [
  ['corner', 'Corner'],
  ['plan', 'From above'],
  ['front', 'From the yard'],
  ['side', 'From the side'],
];
const SHOWN: readonly (readonly [Shown, string])[] = [
  ['none', 'Nothing'],
  ['flow', 'Flow of load'],
  ['deflected', 'Deflected shape'],
  ['m', 'Bending moment'],
  ['v', 'Shear'],
  ['n', 'Axial force'],
];
const STATES: readonly (readonly [string, string])[] = [
  ['existing', 'Existing'],
  ['new', 'New'],
  ['removed', 'Removed'],
  ['roof', 'Roof skins'],
  ['ground', 'Ground'],
];

const colours = (): Colours => {
  const s = getComputedStyle(document.documentElement);
  const of = (name: string): string => s.getPropertyValue(`--${name}`).trim();
  return { desk: of('desk'), paper: of('sheet'), ink: of('ink'), accent: of('accent'), line: of('line-strong') };
};

export default function ModelView() {
  const canvas = useRef<HTMLCanvasElement>(null);
  const stage = useRef<Stage>(undefined);
  const summary = useProject((p) => p.summary);
  const picked = useDesk((d) => d.picked);
  const dark = useDark();
  const [combinations, setCombinations] = useState<readonly string[]>([]);
  const [combination, setCombination] = useState('');
  const [state, setState] = useState<SceneState>();
  const [shown, setShown] = useState<Shown>('none');
  const [hidden, setHidden] = useState<ReadonlySet<string>>(new Set());
  const [axis, setAxis] = useState<Axis>('y');
  const [share, setShare] = useState(100);
  const [told, setTold] = useState('');
  const [fault, setFault] = useState(false);
  const [tools, setTools] = useState(() => innerWidth > 860);

  useEffect(() => {
    const el = canvas.current!;
    let s: Stage;
    try {
      s = new Stage(el, colours());
    } catch {
      setFault(true);
      return;
    }
    stage.current = s;
    const box = el.parentElement!;
    const watch = new ResizeObserver(() => s.resize(box.clientWidth, box.clientHeight));
    watch.observe(box);
    s.resize(box.clientWidth, box.clientHeight);
    return () => {
      watch.disconnect();
      s.dispose();
      stage.current = undefined;
    };
  }, []);

  // The model is asked for anew with every derived state.
  useEffect(() => {
    let here = true;
    if (summary?.drawable)
      void (async () => {
        const worker = thorough();
        await worker.call('derive', textNow(), undefined);
        const [scene, list] = await Promise.all([worker.call('scene'), worker.call('combinations')]);
        if (!here) return;
        if (scene) stage.current?.show(scene);
        setCombinations(list);
        setCombination((c) => (list.includes(c) ? c : (list[0] ?? '')));
      })();
    return () => {
      here = false;
    };
  }, [summary]);

  useEffect(() => {
    let here = true;
    if (combination && summary)
      void thorough()
        .call('sceneState', combination)
        .then((s) => here && setState(s));
    return () => {
      here = false;
    };
  }, [combination, summary]);

  useEffect(() => {
    stage.current?.ghost(shown !== 'none');
    if (stage.current) setTold(layOver(stage.current, state, shown, colours())?.text ?? '');
  }, [state, shown]);
  useEffect(() => stage.current?.pick(picked), [picked]);
  useEffect(() => stage.current?.hide(hidden), [hidden]);
  useEffect(() => stage.current?.slice(axis, share / 100), [axis, share]);
  useEffect(() => {
    void dark;
    stage.current?.recolour(colours());
  }, [dark]);

  const pressed = useRef<{ x: number; y: number }>(undefined);
  if (fault) return <p className="waiting">This browser shows no 3-D here. Everything else works without it.</p>;
  return (
    <div className="model-view">
      <canvas
        ref={canvas}
        tabIndex={0}
        role="img"
        aria-label="Model of the cover. Drag to turn it; the buttons beside it do the same."
        onPointerDown={(e) => {
          pressed.current = { x: e.clientX, y: e.clientY };
        }}
        onPointerUp={(e) => {
          const p = pressed.current;
          if (!p || Math.hypot(e.clientX - p.x, e.clientY - p.y) > 5) return;
          const r = e.currentTarget.getBoundingClientRect();
          const mark = stage.current?.markAt(
            ((e.clientX - r.left) / r.width) * 2 - 1,
            1 - ((e.clientY - r.top) / r.height) * 2,
          );
          pick(mark);
        }}
      />
      <button type="button" className="model-tools-key" aria-expanded={tools} onClick={() => setTools(!tools)}>
        {tools ? 'Hide tools' : 'Tools'}
      </button>
      {tools && (
        <form className="model-tools" aria-label="Model tools">
          <fieldset className="keys">
            <legend>Look</legend>
            {VIEWS.map(([v, label]) => (
              <button type="button" key={v} onClick={() => stage.current?.look(v)}>
                {label}
              </button>
            ))}
          </fieldset>
          <fieldset>
            <legend>Show</legend>
            {STATES.map(([id, label]) => (
              <label className="choice" key={id}>
                <input
                  type="checkbox"
                  checked={!hidden.has(id)}
                  onChange={(e) => {
                    const next = new Set(hidden);
                    if (e.target.checked) next.delete(id);
                    else next.add(id);
                    setHidden(next);
                  }}
                />
                {label}
              </label>
            ))}
          </fieldset>
          <fieldset>
            <legend>Cut</legend>
            <div className="row">
              <select aria-label="Direction of the cut" value={axis} onChange={(e) => setAxis(e.target.value as Axis)}>
                <option value="y">across, out from the wall</option>
                <option value="x">along the house</option>
                <option value="z">level</option>
              </select>
            </div>
            <input
              type="range"
              min={0}
              max={100}
              value={share}
              aria-label="Place of the cut"
              onChange={(e) => setShare(Number(e.target.value))}
            />
          </fieldset>
          <label>
            Load
            <select value={shown} onChange={(e) => setShown(e.target.value as Shown)}>
              {SHOWN.map(([id, label]) => (
                <option key={id} value={id}>
                  {label}
                </option>
              ))}
            </select>
          </label>
          {shown !== 'none' && (
            <label>
              Combination
              <select value={combination} onChange={(e) => setCombination(e.target.value)}>
                {combinations.map((c) => (
                  <option key={c}>{c}</option>
                ))}
              </select>
            </label>
          )}
          {picked && (
            <button type="button" onClick={() => openPanel('part')}>
              {picked}: checks and load path
            </button>
          )}
        </form>
      )}
      {told && (
        <output className="model-told">
          {told} <span className="quiet">{combination}</span>
        </output>
      )}
    </div>
  );
}
