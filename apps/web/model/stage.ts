/** The stage of the model: scene, camera and light, painted only when something changed. */
import {
  AmbientLight,
  Box3,
  BufferAttribute,
  BufferGeometry,
  Color,
  DirectionalLight,
  Group,
  LineBasicMaterial,
  LineSegments,
  Mesh,
  MeshLambertMaterial,
  PerspectiveCamera,
  Plane,
  Raycaster,
  Scene as Stage3,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { Scene, SceneMesh } from '../../../src/index.js';

export interface Colours {
  readonly desk: string;
  readonly paper: string;
  readonly ink: string;
  readonly accent: string;
  readonly line: string;
}

export type ViewName = 'corner' | 'plan' | 'front' | 'side';
export type Axis = 'x' | 'y' | 'z';

const DIRECTIONS: Readonly<Record<ViewName, readonly [number, number, number]>> = {
  corner: [0.9, 1.15, 0.75],
  plan: [0, 0.001, 1],
  front: [0, 1, 0.02],
  side: [1, 0, 0.02],
};

/** What is drawn through: a covering hides what one wants to see, so roofs are thin washes of colour. */
const THIN: ReadonlySet<string> = new Set(['roof-surface', 'house-roof']);

export class Stage {
  private readonly renderer: WebGLRenderer;
  private readonly stage = new Stage3();
  private readonly camera = new PerspectiveCamera(32, 1, 10, 20000);
  private readonly controls: OrbitControls;
  private readonly parts = new Group();
  readonly over = new Group();
  private readonly cut = new Plane(new Vector3(0, 0, -1), 1e9);
  private asked = 0;
  private scene: Scene | undefined;
  private picked: string | undefined;
  private hidden: ReadonlySet<string> = new Set();
  private faint = false;

  constructor(
    canvas: HTMLCanvasElement,
    private colours: Colours,
  ) {
    this.renderer = new WebGLRenderer({ canvas, antialias: true, preserveDrawingBuffer: true });
    this.renderer.clippingPlanes = [this.cut];
    this.camera.up.set(0, 0, 1);
    const sun = new DirectionalLight('#ffffff', 1.7);
    sun.position.set(300, 700, 900);
    this.stage.add(new AmbientLight('#ffffff', 1.6), sun, this.parts, this.over);
    this.controls = new OrbitControls(this.camera, canvas);
    this.controls.listenToKeyEvents(canvas);
    this.controls.addEventListener('change', this.ask);
  }

  readonly ask = (): void => {
    if (this.asked) return;
    this.asked = requestAnimationFrame(() => {
      this.asked = 0;
      this.renderer.render(this.stage, this.camera);
    });
  };

  resize(w: number, h: number): void {
    this.renderer.setPixelRatio(Math.min(2, devicePixelRatio));
    this.renderer.setSize(w, h, false);
    this.camera.aspect = w / Math.max(1, h);
    this.camera.updateProjectionMatrix();
    this.ask();
  }

  recolour(colours: Colours): void {
    this.colours = colours;
    if (this.scene) this.show(this.scene);
  }

  show(scene: Scene): void {
    const first = this.scene === undefined;
    this.scene = scene;
    clear(this.parts);
    this.stage.background = new Color(this.colours.desk);
    for (const m of scene.meshes) this.add(m);
    this.apply();
    if (first) this.look('corner');
    this.ask();
  }

  private add(m: SceneMesh): void {
    const c = this.colours;
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(m.triangles, 3));
    geometry.computeVertexNormals();
    const fresh = m.state === 'new';
    const thin = THIN.has(m.role) || m.role === 'grade';
    const material = new MeshLambertMaterial({
      color: new Color(c.paper).lerp(
        new Color(fresh ? c.accent : c.ink),
        fresh ? (m.material === 'concrete' ? 0.18 : 0.4) : 0.1,
      ),
      transparent: thin,
      opacity: thin ? 0.28 : 1,
      depthWrite: !thin,
      polygonOffset: true,
      polygonOffsetFactor: 1,
      polygonOffsetUnits: 1,
    });
    const body = new Mesh(geometry, material);
    body.userData = m;
    this.parts.add(body);
    const lines = new BufferGeometry();
    lines.setAttribute('position', new BufferAttribute(m.edges, 3));
    const edge = new LineSegments(
      lines,
      new LineBasicMaterial({ color: fresh ? c.accent : c.ink, transparent: true, opacity: fresh ? 1 : 0.55 }),
    );
    edge.userData = m;
    this.parts.add(edge);
  }

  /** Shows what is picked and leaves out what is hidden. */
  private apply(): void {
    for (const o of this.parts.children) {
      const m = o.userData as SceneMesh;
      o.visible =
        !this.hidden.has(m.state) &&
        !(this.hidden.has('roof') && THIN.has(m.role)) &&
        !(m.role === 'grade' && this.hidden.has('ground'));
      if (o instanceof Mesh) {
        const material = o.material as MeshLambertMaterial;
        const thin = THIN.has(m.role) || m.role === 'grade';
        material.transparent = thin || this.faint;
        material.opacity = this.faint ? 0.12 : thin ? 0.28 : 1;
        material.needsUpdate = true;
        material.emissive.set(m.mark === this.picked ? this.colours.accent : '#000000');
        material.emissiveIntensity = m.mark === this.picked ? 0.9 : 0;
      }
    }
    this.ask();
  }

  pick(mark: string | undefined): void {
    this.picked = mark;
    this.apply();
  }

  /** Makes bodies see-through, so that what is laid over them reads. */
  ghost(on: boolean): void {
    this.faint = on;
    this.apply();
  }

  hide(what: ReadonlySet<string>): void {
    this.hidden = what;
    this.apply();
  }

  /** Cuts away all that lies beyond a share of the model's extent along an axis; 1 cuts nothing. */
  slice(axis: Axis, share: number): void {
    if (!this.scene) return;
    const i = axis === 'x' ? 0 : axis === 'y' ? 1 : 2;
    const room = 60;
    const low = this.scene.min[i]! - room;
    const high = this.scene.max[i]! + room;
    this.cut.normal.set(i === 0 ? -1 : 0, i === 1 ? -1 : 0, i === 2 ? -1 : 0);
    this.cut.constant = share >= 1 ? 1e9 : low + share * (high - low);
    this.ask();
  }

  look(name: ViewName): void {
    if (!this.scene) return;
    const { min, max } = this.scene;
    const box = new Box3(new Vector3(...min), new Vector3(...max));
    const middle = box.getCenter(new Vector3());
    const radius = box.getSize(new Vector3()).length() / 2;
    const narrow = Math.min(1, this.camera.aspect);
    const distance = (radius * 1.08) / Math.sin((this.camera.fov * Math.PI) / 360) / narrow;
    const d = new Vector3(...DIRECTIONS[name]).normalize();
    this.camera.position.copy(middle).addScaledVector(d, distance);
    this.controls.target.copy(middle);
    this.controls.update();
    this.ask();
  }

  /** Mark of the part under a point of the canvas, −1…1 both ways. */
  markAt(x: number, y: number): string | undefined {
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(x, y), this.camera);
    const hits = ray.intersectObjects(this.parts.children.filter((o) => o instanceof Mesh && o.visible));
    const seen = hits.filter((h) => this.cut.distanceToPoint(h.point) >= 0);
    const solid = seen.find(
      (h) => !THIN.has((h.object.userData as SceneMesh).role) && (h.object.userData as SceneMesh).role !== 'grade',
    );
    const m = (solid ?? seen[0])?.object.userData as SceneMesh | undefined;
    return m && m.role !== 'grade' ? m.mark : undefined;
  }

  clearOver(): void {
    clear(this.over);
    this.ask();
  }

  dispose(): void {
    clear(this.parts);
    clear(this.over);
    this.controls.dispose();
    this.renderer.dispose();
  }
}

function clear(group: Group): void {
  for (const o of [...group.children]) {
    group.remove(o);
    if (o instanceof Mesh || o instanceof LineSegments) {
      o.geometry.dispose();
      (o.material as { dispose(): void }).dispose();
    }
  }
}
