import type { Point } from '../plane.ts';
import { type Segment, segmentsBox } from '../segments.ts';
import { type ContourStep, contourSegments } from './contour.ts';
import type { Design, DesignComponent, DesignFailure, DesignPackage, DesignStep } from './types.ts';

type Attributes = Readonly<Record<string, string>>;
type Open<T> = { -readonly [K in keyof T]: T[K] };
type OpenPackage = Open<DesignPackage> & { pins: Map<string, Point>; name: string };
type OpenStep = Open<DesignStep> & {
  profile: Segment[][];
  packages: Map<string, DesignPackage>;
  components: DesignComponent[];
};

/** What was read so far, and which elements are open. */
interface Gathered {
  readonly path: string[];
  readonly steps: OpenStep[];
  readonly layerSides: Map<string, string>;
  readonly notFitted: Set<string>;
  copperLayers: number;
  mmPerUnit: number | null;
  /** Elements kept so far. */
  kept: number;
  step: OpenStep | null;
  pack: OpenPackage | null;
  pin: string | null;
  component: Open<DesignComponent> | null;
  contour: { start: Point; steps: ContourStep[] } | null;
}

/** Takes the elements of one file in their order and keeps what the board needs. */
export interface Gatherer {
  /** Null, or why the file is refused. */
  open(name: string, attributes: Attributes): DesignFailure['reason'] | null;
  close(name: string): void;
  design(): Design;
}

const MAX_DEPTH = 200;
const MAX_KEPT = 500_000;
const COPPER = /^(CONDUCTOR|PLANE|SIGNAL|MIXED|POWER_GROUND)$/;
/** IPC-2581, attribute `units` of CadHeader. */
const MM_PER_UNIT: Readonly<Record<string, number>> = { MILLIMETER: 1, MICRON: 0.001, INCH: 25.4 };

export function makeGatherer(): Gatherer {
  const state: Gathered = {
    path: [],
    steps: [],
    layerSides: new Map(),
    notFitted: new Set(),
    copperLayers: 0,
    mmPerUnit: null,
    kept: 0,
    step: null,
    pack: null,
    pin: null,
    component: null,
    contour: null,
  };
  return {
    open: (name, attributes) => openElement(state, name, attributes),
    close(name) {
      if (Object.hasOwn(CLOSERS, name)) CLOSERS[name](state);
      state.path.pop();
    },
    design: () => ({
      steps: state.steps,
      layerSides: state.layerSides,
      copperLayers: state.copperLayers,
      notFitted: state.notFitted,
    }),
  };
}

function openElement(state: Gathered, name: string, attributes: Attributes): DesignFailure['reason'] | null {
  state.path.push(name);
  if (state.path.length > MAX_DEPTH) return 'nestedTooDeep';
  if (!Object.hasOwn(OPENERS, name)) return null;
  OPENERS[name](state, attributes);
  if (name === 'CadHeader' && state.mmPerUnit === null) return 'noUnits';
  return state.kept > MAX_KEPT ? 'tooMany' : null;
}

const parent = ({ path }: Gathered, up = 1): string => path[path.length - 1 - up] ?? '';
const length = ({ mmPerUnit }: Gathered, text: string | undefined): number => finite(text) * (mmPerUnit ?? 1);
const point = (state: Gathered, { x, y }: Attributes): Point => ({ x: length(state, x), y: length(state, y) });

function heightOf(state: Gathered, { height }: Attributes): number | null {
  return finite(height) > 0 ? length(state, height) : null;
}

/** The contours that count: the step's profile and a package's outlines. */
function isWanted(state: Gathered): boolean {
  if (!/^(Polygon|Cutout)$/.test(parent(state))) return false;
  return state.path.includes('Profile') || (state.pack !== null && parent(state, 2) === 'Outline');
}

const OPENERS: Readonly<Record<string, (state: Gathered, given: Attributes) => void>> = {
  CadHeader(state, { units }) {
    state.mmPerUnit = MM_PER_UNIT[(units ?? '').toUpperCase()] ?? null;
  },
  Layer(state, { name, side, layerFunction }) {
    if (name === undefined) return;
    state.kept++;
    state.layerSides.set(name, (side ?? '').toUpperCase());
    if (COPPER.test((layerFunction ?? '').toUpperCase())) state.copperLayers++;
  },
  RefDes(state, { name, populate }) {
    if (parent(state) === 'BomItem' && name && populate === 'false') state.notFitted.add(name);
  },
  Step(state, { name }) {
    state.step = { name: name ?? '', profile: [], packages: new Map(), components: [] };
    state.steps.push(state.step);
  },
  Package(state, given) {
    state.kept++;
    state.pack = {
      name: given.name ?? '',
      outline: null,
      assembly: null,
      heightMm: heightOf(state, given),
      pinOne: given.pinOne ?? null,
      pins: new Map(),
      through: false,
    };
  },
  Pin(state, { number, type }) {
    state.pin = number ?? null;
    if (state.pack && /^THRU$/i.test(type ?? '')) state.pack.through = true;
  },
  Component(state, given) {
    state.kept++;
    state.component = newComponent(state, given);
  },
  NonstandardAttribute({ component, ...state }, { name, value }) {
    const own = component !== null && state.path[state.path.length - 2] === 'Component';
    if (own && /^value$/i.test(name ?? '') && value) component.value = value;
  },
  Xform(state, { rotation, mirror }) {
    if (!state.component || parent(state) !== 'Component') return;
    state.component.rotation = finite(rotation);
    state.component.mirror = mirror === 'true' || mirror === '1';
  },
  Location(state, given) {
    const { component, pack, pin } = state;
    if (component && parent(state) === 'Component') Object.assign(component, point(state, given));
    else if (pack && pin !== null && parent(state) === 'Pin') {
      state.kept++;
      pack.pins.set(pin, point(state, given));
    }
  },
  PolyBegin(state, given) {
    state.contour = isWanted(state) ? { start: point(state, given), steps: [] } : null;
  },
  PolyStepSegment(state, given) {
    if (!state.contour) return;
    state.kept++;
    state.contour.steps.push({ to: point(state, given), arc: null });
  },
  PolyStepCurve(state, given) {
    if (!state.contour) return;
    state.kept++;
    const centre = point(state, { x: given.centerX, y: given.centerY });
    state.contour.steps.push({ to: point(state, given), arc: { centre, clockwise: given.clockwise === 'true' } });
  },
};

function newComponent(state: Gathered, given: Attributes): Open<DesignComponent> {
  return {
    refdes: given.refDes ?? '',
    packageName: given.packageRef ?? '',
    value: given.part ?? '',
    layer: given.layerRef ?? '',
    x: 0,
    y: 0,
    rotation: 0,
    mirror: false,
    heightMm: heightOf(state, given),
  };
}

const CLOSERS: Readonly<Record<string, (state: Gathered) => void>> = {
  Polygon: endContour,
  Cutout: endContour,
  Pin(state) {
    state.pin = null;
  },
  Package(state) {
    if (state.pack) state.step?.packages.set(state.pack.name, state.pack);
    state.pack = null;
  },
  Component(state) {
    if (state.component) state.step?.components.push(state.component);
    state.component = null;
  },
  Step(state) {
    state.step = null;
  },
};

function endContour(state: Gathered): void {
  const { contour, pack, step, path } = state;
  state.contour = null;
  if (contour === null) return;
  const segments = contourSegments(contour.start, contour.steps);
  if (segments.length === 0) return;
  if (path.includes('Profile')) step?.profile.push(segments);
  // Revision C draws what lies on the far side of the board under OtherSideView.
  else if (pack && /^(Package|OtherSideView)$/.test(parent(state, 2))) pack.outline ??= segmentsBox(segments);
  else if (pack && parent(state, 2) === 'AssemblyDrawing') pack.assembly ??= segmentsBox(segments);
}

function finite(text: string | undefined): number {
  const value = Number(text);
  return text !== undefined && Number.isFinite(value) ? value : 0;
}
