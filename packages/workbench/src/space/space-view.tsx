// The cabinet in space, to be turned: ink edges on paper, air as a tint. Loaded only when it is asked for.

import type { Cabinet } from '@stillair/engine';
import { useEffect, useRef } from 'preact/compat';
import {
  BoxGeometry,
  Color,
  EdgesGeometry,
  Group,
  LineBasicMaterial,
  LineDashedMaterial,
  LineSegments,
  Mesh,
  MeshBasicMaterial,
  PerspectiveCamera,
  Raycaster,
  Scene,
  Vector2,
  Vector3,
  WebGLRenderer,
} from 'three';
import { OrbitControls } from 'three/addons/controls/OrbitControls.js';
import type { ShownDay } from '../engine/protocol.ts';
import { outsideBox } from '../sheet/solids.ts';
import { rgbOf } from '../sheet/wash.ts';
import { type Solid, solidsOf } from './scene.ts';

export interface SpaceViewProps {
  readonly cabinet: Cabinet;
  readonly day: ShownDay;
  readonly time: number;
  readonly dark: boolean;
  readonly picked?: string | undefined;
  readonly onPick: (part: string | undefined) => void;
}

export default function SpaceView({ cabinet, day, time, dark, picked, onPick }: SpaceViewProps) {
  const host = useRef<HTMLDivElement>(null);
  const stage = useRef<Stage | undefined>(undefined);
  const pick = useRef(onPick);
  pick.current = onPick;

  useEffect(() => {
    const made = openStage(host.current!, (part) => pick.current(part));
    stage.current = made;
    return () => {
      made?.close();
      stage.current = undefined;
    };
  }, []);

  useEffect(() => {
    stage.current?.show(solidsOf(cabinet, day, time), { dark, picked });
  }, [cabinet, day, time, dark, picked]);

  const { width, depth, height } = cabinet.inside;
  const size = `${width}|${depth}|${height}`;
  // biome-ignore lint/correctness/useExhaustiveDependencies: the eye moves back only when the cabinet's size changes.
  useEffect(() => {
    stage.current?.frame(outsideBox(cabinet));
  }, [size]);

  return (
    <div className="space" ref={host}>
      <p className="no-space">This browser shows no 3-D view; the three elevations show the same.</p>
    </div>
  );
}

interface Look {
  readonly dark: boolean;
  readonly picked: string | undefined;
}

interface Stage {
  readonly show: (solids: readonly Solid[], look: Look) => void;
  readonly frame: (box: ReturnType<typeof outsideBox>) => void;
  readonly close: () => void;
}

function openStage(host: HTMLElement, onPick: (part: string | undefined) => void): Stage | undefined {
  let renderer: WebGLRenderer;
  try {
    renderer = new WebGLRenderer({ antialias: true, alpha: true, preserveDrawingBuffer: true });
  } catch {
    host.classList.add('without');
    return undefined;
  }
  const scene = new Scene();
  const camera = new PerspectiveCamera(32, 1, 0.05, 60);
  const controls = new OrbitControls(camera, renderer.domElement);
  controls.enableDamping = false;
  let group = new Group();
  scene.add(group);
  host.append(renderer.domElement);
  renderer.domElement.tabIndex = 0;
  // Its arrow keys are its own, also where a screen reader has others for them.
  renderer.domElement.setAttribute('role', 'application');
  renderer.domElement.setAttribute(
    'aria-label',
    'the cabinet in space; the arrow keys turn it, plus and minus bring it nearer',
  );
  renderer.setPixelRatio(Math.min(2, devicePixelRatio));

  const draw = (): void => renderer.render(scene, camera);
  const resize = (): void => {
    const { clientWidth: width, clientHeight: height } = host;
    if (width === 0 || height === 0) return;
    renderer.setSize(width, height);
    camera.aspect = width / height;
    camera.updateProjectionMatrix();
    draw();
  };
  const observer = new ResizeObserver(resize);
  observer.observe(host);
  controls.addEventListener('change', draw);
  renderer.domElement.addEventListener('keydown', (event) => turnBy(event, camera, controls, draw));
  let pressed = { x: 0, y: 0 };
  renderer.domElement.addEventListener('pointerdown', ({ clientX: x, clientY: y }) => {
    pressed = { x, y };
  });
  renderer.domElement.addEventListener('pointerup', ({ clientX, clientY }) => {
    if (Math.hypot(clientX - pressed.x, clientY - pressed.y) < 4) onPick(partAt(clientX, clientY));
  });

  function partAt(clientX: number, clientY: number): string | undefined {
    const { left, top, width, height } = renderer.domElement.getBoundingClientRect();
    const point = new Vector2(((clientX - left) / width) * 2 - 1, 1 - ((clientY - top) / height) * 2);
    const ray = new Raycaster();
    ray.setFromCamera(point, camera);
    const hit = ray.intersectObjects(group.children, true).find(({ object }) => object.userData['solid'] === true);
    return hit?.object.userData['part'] as string | undefined;
  }

  return {
    show: (solids, look) => {
      scene.remove(group);
      dispose(group);
      group = new Group();
      for (const solid of solids) group.add(...figureOf(solid, look));
      scene.add(group);
      draw();
    },
    frame: ({ x, y, z }) => {
      const middle = new Vector3((x[0] + x[1]) / 2, (z[0] + z[1]) / 2, -(y[0] + y[1]) / 2);
      const size = Math.hypot(x[1] - x[0], y[1] - y[0], z[1] - z[0]);
      controls.target.copy(middle);
      camera.position.copy(middle).add(new Vector3(0.55, 0.42, 1.25).multiplyScalar(size * 1.15));
      controls.update();
      resize();
    },
    close: () => {
      observer.disconnect();
      controls.dispose();
      dispose(group);
      renderer.dispose();
      renderer.domElement.remove();
    },
  };
}

/** The file's z points up and its y to the back; here y points up and z to the front. */
function figureOf({ part, box, look, temperature }: Solid, { dark, picked }: Look): (Mesh | LineSegments)[] {
  const size = new Vector3(box.x[1] - box.x[0], box.z[1] - box.z[0], box.y[1] - box.y[0]);
  const place = new Vector3((box.x[0] + box.x[1]) / 2, (box.z[0] + box.z[1]) / 2, -(box.y[0] + box.y[1]) / 2);
  const ink = new Color(picked === part ? (dark ? '#ff9a66' : '#a8340a') : dark ? '#ece8dd' : '#23272d');
  const geometry = new BoxGeometry(...size.toArray());
  const edges = new LineSegments(
    new EdgesGeometry(geometry),
    look === 'machine'
      ? new LineDashedMaterial({ color: ink, dashSize: 0.03, gapSize: 0.02 })
      : new LineBasicMaterial({ color: ink }),
  );
  edges.computeLineDistances();
  edges.position.copy(place);
  if (look === 'air') edges.visible = picked === part;
  const { opacity, color } = skinOf(look, dark, temperature);
  const material = new MeshBasicMaterial({ color, transparent: opacity < 1, opacity, depthWrite: opacity > 0.9 });
  const mesh = new Mesh(geometry, material);
  mesh.position.copy(place);
  mesh.userData = { part, solid: look !== 'air' && look !== 'glass' };
  return [mesh, edges];
}

function skinOf(
  look: Solid['look'],
  dark: boolean,
  temperature = 293,
): { readonly opacity: number; readonly color: Color } {
  const paper = new Color(dark ? '#2a2f36' : '#f4efe2');
  switch (look) {
    case 'air':
      return { opacity: 0.45, color: new Color(...rgbOf(temperature, dark)) };
    case 'glass':
      return { opacity: 0.12, color: new Color(dark ? '#9fb7c4' : '#b8d0da') };
    case 'door':
      return { opacity: 0.25, color: paper };
    case 'machine':
      return { opacity: 0.35, color: paper };
    case 'bed':
      return { opacity: 1, color: new Color(dark ? '#ece8dd' : '#23272d') };
    case 'wall':
    case 'board':
      return { opacity: 0.75, color: paper };
  }
}

function turnBy(event: KeyboardEvent, camera: PerspectiveCamera, controls: OrbitControls, draw: () => void): void {
  const angles: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [-0.12, 0],
    ArrowRight: [0.12, 0],
    ArrowUp: [0, -0.1],
    ArrowDown: [0, 0.1],
  };
  const nearer: Readonly<Record<string, number>> = { '+': 0.9, '-': 1.1 };
  const away = camera.position.clone().sub(controls.target);
  const turn = angles[event.key];
  if (turn !== undefined) {
    const flat = Math.hypot(away.x, away.z);
    const tilt = Math.min(1.4, Math.max(-1.4, Math.atan2(away.y, flat) - turn[1]));
    const around = Math.atan2(away.x, away.z) + turn[0];
    const length = away.length();
    away.set(
      length * Math.cos(tilt) * Math.sin(around),
      length * Math.sin(tilt),
      length * Math.cos(tilt) * Math.cos(around),
    );
  } else if (nearer[event.key] !== undefined) away.multiplyScalar(nearer[event.key]!);
  else return;
  event.preventDefault();
  camera.position.copy(controls.target).add(away);
  controls.update();
  draw();
}

function dispose(group: Group): void {
  group.traverse((object) => {
    if (object instanceof Mesh || object instanceof LineSegments) {
      (object.geometry as BoxGeometry).dispose();
      (object.material as MeshBasicMaterial).dispose();
    }
  });
}
