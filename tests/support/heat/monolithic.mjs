/**
 * A second, independent way to solve a heat case: one sparse system over all faces and bodies, stepped with an
 * L-stable two-stage implicit scheme (Alexander 1977, SDIRK2), films by fixed-point iteration inside each stage,
 * conjugate gradients for the linear systems. It shares no method, table or code with main/heat and is slow:
 * for small boards and small steps. Written from the model's page alone.
 */

const KELVIN = 273.15;
const SIGMA = 5.6704e-8;
const viscosity = (T) => (1.458e-6 * T ** 1.5) / (T + 110.4);
const conductivity = (T) => (2.64638e-3 * T ** 1.5) / (T + 245.4 * 10 ** (-12 / T));
const density = (T) => 101325 / (287.05 * T);
const CP = 1006;

/** Point in a rectangle of l x w turned by `turn` degrees about (x, y), borders in. */
function inTurned(px, py, { x, y, l, w, turn = 0 }) {
  const a = (-turn * Math.PI) / 180;
  const u = (px - x) * Math.cos(a) - (py - y) * Math.sin(a);
  const v = (px - x) * Math.sin(a) + (py - y) * Math.cos(a);
  return Math.abs(u) <= l / 2 + 1e-9 && Math.abs(v) <= w / 2 + 1e-9;
}

/** Film (W/m2K, convection only) of a horizontal plate in still air. */
function plateFilm(surface, room, length, up) {
  const film = (surface + room) / 2 + KELVIN;
  const ra =
    ((9.80665 / film) * Math.abs(surface - room) * length ** 3 * density(film) ** 2 * CP) /
    (viscosity(film) * conductivity(film));
  const favourable = surface >= room ? up : !up;
  const nu = favourable ? (ra >= 1e7 ? 0.15 * ra ** (1 / 3) : 0.54 * ra ** 0.25) : 0.27 * ra ** 0.25;
  return Math.max(2, (nu * conductivity(film)) / length);
}

const radiation = (surface, room, eps) => {
  const a = surface + KELVIN;
  const b = room + KELVIN;
  return eps * SIGMA * (a * a + b * b) * (a + b);
};

/** Film strength of the nozzle and its Reynolds number. */
export function nozzleStrength(nozzle, hood, gas, flow) {
  const D = nozzle.shape === 'rect' ? (2 * nozzle.l * nozzle.w) / (nozzle.l + nozzle.w) : nozzle.D;
  const T = (gas + 150) / 2 + KELVIN;
  const m = (flow / 1000 / 60) * density(KELVIN + 20);
  const Re = (4 * m) / (Math.PI * D * viscosity(T));
  if (hood) return { Re, K: (hood.h ?? 100) * (flow / 30) ** 0.6, D };
  const Pr = (CP * viscosity(T)) / conductivity(T);
  const K = (conductivity(T) / D) * Pr ** 0.42 * 2 * Re ** 0.5 * (1 + 0.005 * Re ** 0.55) ** 0.5;
  return { Re, K, D };
}

/** h/K and dilution at (px, py) for a nozzle over (cx, cy). */
function jetAt(nozzle, hood, D, cx, cy, px, py) {
  const heading = ((nozzle.heading ?? 0) * Math.PI) / 180;
  const shift = (nozzle.H ?? 0) * Math.tan(((nozzle.tilt ?? 0) * Math.PI) / 180);
  const places = [];
  const sweep = hood ? 0 : (nozzle.sweep ?? 0);
  if (sweep > 0) {
    for (let i = 0; i < 32; i++) {
      const angle = (i / 32) * 2 * Math.PI;
      places.push([cx + sweep * Math.cos(angle), cy + sweep * Math.sin(angle)]);
    }
  } else places.push([cx, cy]);
  let h = 0;
  let hEta = 0;
  for (const [x0, y0] of places) {
    const dx = px - x0 - shift * Math.cos(heading);
    const dy = py - y0 - shift * Math.sin(heading);
    const { shape, eta } = jetPoint(nozzle, hood, D, dx, dy);
    h += shape / places.length;
    hEta += (shape * eta) / places.length;
  }
  return { shape: h, eta: h > 0 ? hEta / h : 0 };
}

function jetPoint(nozzle, hood, D, dx, dy) {
  let outside;
  let r;
  if (nozzle.shape === 'rect') {
    const a = (-(nozzle.turn ?? 0) * Math.PI) / 180;
    const u = Math.abs(dx * Math.cos(a) - dy * Math.sin(a)) - nozzle.l / 2;
    const v = Math.abs(dx * Math.sin(a) + dy * Math.cos(a)) - nozzle.w / 2;
    outside = Math.sqrt(Math.max(u, 0) ** 2 + Math.max(v, 0) ** 2);
    r = outside > 0 ? D / 2 + outside : 0;
  } else {
    r = Math.sqrt(dx * dx + dy * dy);
    outside = Math.max(0, r - D / 2);
  }
  if (hood) {
    if (outside <= 1e-9) return { shape: 1, eta: 1 };
    const b = 5 * hood.gap;
    return {
      shape: hood.leak * (b / (b + outside)) ** 0.8,
      eta: (b / (b + outside)) ** 0.5 * (D / 2 / (D / 2 + outside)),
    };
  }
  const c = 0.1 * (Math.min(12, Math.max(2, (nozzle.H ?? 0) / D)) - 6);
  const average = (s) => ((D / s) * (1 - (1.1 * D) / s)) / (1 + (c * D) / s);
  if (r <= 2.5 * D) return { shape: average(2.5 * D), eta: r > 0 ? Math.min(1, ((1.5 * D) / r) ** 0.9) : 1 };
  // The local value that the average implies: h = (1 / 2r) d(r^2 average) / dr, here by the chain rule.
  const numerator = D * r * r - 1.1 * D * D * r;
  const denominator = r + c * D;
  const derivative = ((2 * D * r - 1.1 * D * D) * denominator - numerator) / denominator ** 2;
  return { shape: derivative / (2 * r), eta: Math.min(1, ((1.5 * D) / r) ** 0.9) };
}

/** Cells, bodies' entries and couplings of a case. */
function buildSystem(c, cell) {
  const { W, H, t, rhoc, kpar, kthru } = c.board;
  const nx = Math.ceil(W / cell - 1e-6);
  const ny = Math.ceil(H / cell - 1e-6);
  const number = new Map();
  const cells = [];
  for (let j = 0; j < ny; j++) {
    for (let i = 0; i < nx; i++) {
      const x = (i + 0.5) * cell;
      const y = (j + 0.5) * cell;
      if (x > W + 1e-9 || y > H + 1e-9) continue;
      const cut = (c.board.cutouts ?? []).some(
        ([x0, y0, x1, y1]) => x > x0 + 1e-9 && x < x1 - 1e-9 && y > y0 + 1e-9 && y < y1 - 1e-9,
      );
      if (cut) continue;
      number.set(j * nx + i, cells.length);
      cells.push({ i, j, x, y });
    }
  }
  const n = cells.length;
  const nodes = [];
  const links = [];
  for (const upper of [true, false]) {
    for (const place of cells) nodes.push({ ...place, upper, capacity: (rhoc * t) / 2, bare: 1, kind: 'face' });
  }
  for (const [key, index] of number) {
    const right = key % nx === nx - 1 ? undefined : number.get(key + 1);
    const above = number.get(key + nx);
    for (const other of [right, above]) {
      if (other === undefined) continue;
      const g = (kpar * t) / 2 / (cell * cell);
      links.push([index, other, g], [index + n, other + n, g]);
    }
    links.push([index, index + n, kthru / (t / 2)]);
  }
  const worked = c.side ?? 'top';
  const covered = new Float64Array(2 * n);
  c.parts.forEach((part, partIndex) => {
    const shields = (c.shields ?? []).filter((shield) => shield.ref === part.ref);
    const mass = shields.reduce((sum, shield) => sum + (shield.mc ?? 0), 0);
    const resistance = shields.reduce((sum, shield) => sum + shield.R, 0);
    cells.forEach((place, index) => {
      if (Math.hypot(place.x - part.x, place.y - part.y) > part.l + part.w + 2 * cell) return;
      let inside = 0;
      for (let a = 0; a < 8; a++) {
        for (let b = 0; b < 8; b++) {
          const px = (place.i + (a + 0.5) / 8) * cell;
          const py = (place.j + (b + 0.5) / 8) * cell;
          if (inTurned(px, py, part)) inside++;
        }
      }
      if (inside === 0) return;
      const share = inside / 64;
      const face = part.side === worked ? index : index + n;
      covered[face] += share;
      const sides = 1 + (0.5 * 2 * (part.l + part.w) * part.height) / (part.l * part.w);
      nodes.push({
        ...place,
        upper: part.side === worked,
        kind: 'body',
        face,
        share,
        sides,
        resistance,
        part: partIndex,
        eps: part.eps,
        capacity: share * (part.height * part.rhoc + mass),
        skin: (3 * part.k) / part.height,
      });
      links.push([face, nodes.length - 1, share * part.g]);
    });
  });
  for (let face = 0; face < 2 * n; face++) nodes[face].bare = Math.max(0, 1 - covered[face]);
  for (const node of nodes) if (node.kind === 'body') node.area = node.share / Math.max(1, covered[node.face]);
  return { n, nodes, links, length: (W * H) / (2 * (W + H)) };
}

/** Film and its equivalent temperature that a node sees, before shields. */
function filmOf(c, node, T, system, now) {
  const room = c.room;
  const eps = node.eps ?? c.board.eps ?? 0.9;
  if (!node.upper && node.heated) return { h: c.preheater.h, Teq: now.source };
  const idle = plateFilm(T, room, system.length, node.upper);
  const hr = radiation(T, room, eps);
  if (node.upper && now.jet) {
    const jet = now.jet.K * now.jet.geometry[node.index].shape;
    if (jet > idle) {
      const entrained = c.entrained ?? room;
      const gas = entrained + now.jet.geometry[node.index].eta * (now.gas - entrained);
      return { h: jet + hr, Teq: (jet * gas + hr * room) / (jet + hr) };
    }
  }
  return { h: idle + hr, Teq: room };
}

/** Film through shield, with side walls and area: what enters the balance. */
function outerFilm(c, node, T, system, now) {
  const { h, Teq } = filmOf(c, node, T, system, now);
  if (node.kind === 'face') return { h: h * node.bare, Teq };
  return { h: (node.area * node.sides) / (1 / h + node.resistance), Teq };
}

/** Conjugate gradients with a diagonal preconditioner; `x` holds the first guess and the answer. */
function solve(diagonal, { from, to, g }, scale, rhs, x) {
  const size = rhs.length;
  const apply = (v, out) => {
    for (let i = 0; i < size; i++) out[i] = diagonal[i] * v[i];
    for (let k = 0; k < g.length; k++) {
      const flow = scale * g[k] * (v[from[k]] - v[to[k]]);
      out[from[k]] += flow;
      out[to[k]] -= flow;
    }
  };
  const jacobi = diagonal.slice();
  for (let k = 0; k < g.length; k++) {
    jacobi[from[k]] += scale * g[k];
    jacobi[to[k]] += scale * g[k];
  }
  const r = new Float64Array(size);
  const z = new Float64Array(size);
  const p = new Float64Array(size);
  const q = new Float64Array(size);
  apply(x, r);
  for (let i = 0; i < size; i++) {
    r[i] = rhs[i] - r[i];
    z[i] = r[i] / jacobi[i];
    p[i] = z[i];
  }
  let rz = 0;
  let goal = 0;
  for (let i = 0; i < size; i++) {
    rz += r[i] * z[i];
    goal += (rhs[i] * rhs[i]) / jacobi[i];
  }
  for (let round = 0; round < 400 && rz > 1e-18 * goal; round++) {
    apply(p, q);
    let pq = 0;
    for (let i = 0; i < size; i++) pq += p[i] * q[i];
    const alpha = rz / pq;
    let next = 0;
    for (let i = 0; i < size; i++) {
      x[i] += alpha * p[i];
      r[i] -= alpha * q[i];
      z[i] = r[i] / jacobi[i];
      next += r[i] * z[i];
    }
    const beta = next / rz;
    rz = next;
    for (let i = 0; i < size; i++) p[i] = z[i] + beta * p[i];
  }
}

/** Profile of a segment at share `s` of its time. */
function profileAt(c, segment, s, T, system) {
  const at = (ramp) => ramp[0] + s * (ramp[1] - ramp[0]);
  const wanted = at(segment.pre ?? [c.room, c.room]);
  let command = wanted;
  if (c.preheater?.sensor) {
    const read = T[system.sensor];
    command = Math.min(c.preheater.max ?? Infinity, Math.max(c.room, wanted + 8 * (wanted - read)));
  }
  return { command, gas: segment.gas ? at(segment.gas) : null };
}

/** What acts at the end of a step, for the skins: the ramps have gone on since its middle. */
function atEnd(c, segment, share, source, now, hood) {
  if (!now.jet) return { ...now, source };
  const gas = segment.gas[0] + share * (segment.gas[1] - segment.gas[0]);
  return { source, gas, jet: { ...now.jet, K: nozzleStrength(c.nozzle, hood, gas, segment.flow).K } };
}

/** One implicit stage: T = base + weight * F(T); returns T. */
function stage(c, system, base, guess, weight, now) {
  const { nodes, links } = system;
  const T = guess.slice();
  const diagonal = new Float64Array(nodes.length);
  const rhs = new Float64Array(nodes.length);
  for (let round = 0; round < 6; round++) {
    nodes.forEach((node, index) => {
      const { h, Teq } = outerFilm(c, node, T[index], system, now);
      diagonal[index] = node.capacity + weight * h;
      rhs[index] = node.capacity * base[index] + weight * h * Teq;
    });
    const before = T.slice();
    solve(diagonal, links, weight, rhs, T);
    let change = 0;
    for (let i = 0; i < T.length; i++) change = Math.max(change, Math.abs(T[i] - before[i]));
    if (change < 1e-6) break;
  }
  return T;
}

function prepare(c, system) {
  const { nodes, n } = system;
  nodes.forEach((node, index) => {
    node.index = index;
    if (c.preheater) node.heated = inTurned(node.x, node.y, c.preheater);
  });
  if (c.preheater?.sensor) {
    const [px, py] = c.preheater.sensor;
    const i = Math.floor(px / system.cell + 1e-9);
    const j = Math.floor(py / system.cell + 1e-9);
    system.sensor = n + nodes.slice(0, n).findIndex((node) => node.i === i && node.j === j);
  }
}

/**
 * Solves a case and returns peaks per part: extremes over the cells, share-weighted mean of the body.
 * @param {object} c the case
 * @param {{ cellMm: number, stepS: number }} options
 */
export function solveCase(c, { cellMm, stepS }) {
  const cell = cellMm / 1000;
  const built = buildSystem(c, cell);
  const links = {
    from: Int32Array.from(built.links, (link) => link[0]),
    to: Int32Array.from(built.links, (link) => link[1]),
    g: Float64Array.from(built.links, (link) => link[2]),
  };
  const system = { ...built, links, cell };
  prepare(c, system);
  const { nodes } = system;
  const hood = c.nozzle?.hood ?? c.hood;
  let T = new Float64Array(nodes.length).fill(c.room);
  let source = c.room;
  const peak = T.slice();
  const peakSkin = T.slice();
  const gamma = 1 - Math.SQRT1_2;
  for (const segment of c.profile) {
    const steps = Math.ceil(segment.s / stepS - 1e-9);
    const dt = segment.s / steps;
    const [cx, cy] = segment.at ?? [c.site?.x, c.site?.y];
    const geometry = segment.gas
      ? nodes.map((node) => jetAt(c.nozzle, hood, nozzleStrength(c.nozzle, hood, 300, 30).D, cx, cy, node.x, node.y))
      : null;
    for (let step = 0; step < steps; step++) {
      const share = (step + 0.5) / steps;
      const { command, gas } = profileAt(c, segment, share, T, system);
      const lag = c.preheater?.lag ?? 1;
      const newSource = lag > 0 ? command + (source - command) * Math.exp(-dt / lag) : command;
      const now = {
        source: (source + newSource) / 2,
        gas,
        jet: gas === null ? null : { K: nozzleStrength(c.nozzle, hood, gas, segment.flow).K, geometry },
      };
      source = newSource;
      const first = stage(c, system, T, T, gamma * dt, now);
      const base = T.map((value, i) => value + ((1 - gamma) / gamma) * (first[i] - value));
      T = stage(c, system, base, first, gamma * dt, now);
      const then = atEnd(c, segment, (step + 1) / steps, newSource, now, hood);
      nodes.forEach((node, index) => {
        peak[index] = Math.max(peak[index], T[index]);
        if (node.kind !== 'body') return;
        const { h, Teq } = filmOf(c, node, T[index], system, then);
        const through = 1 / (1 / h + node.resistance);
        peakSkin[index] = Math.max(peakSkin[index], (through * Teq + node.skin * T[index]) / (through + node.skin));
      });
    }
  }
  return { nozzle: nozzleFigures(c, hood), parts: figures(c, nodes, peak, peakSkin), nodes, peak };
}

function nozzleFigures(c, hood) {
  const blowing = c.profile.filter((segment) => segment.gas);
  if (blowing.length === 0) return null;
  const hottest = blowing.reduce((best, next) => (next.gas[1] > best.gas[1] ? next : best));
  const { Re, K, D } = nozzleStrength(c.nozzle, hood, hottest.gas[1], hottest.flow);
  return { Re, hPlateau: K * jetPoint({ ...c.nozzle, shape: c.nozzle.shape }, hood, D, 0, 0).shape };
}

function figures(c, nodes, peak, peakSkin) {
  const parts = {};
  c.parts.forEach((part, partIndex) => {
    const entries = nodes.flatMap((node, index) => (node.kind === 'body' && node.part === partIndex ? [index] : []));
    if (entries.length === 0) return;
    const weight = entries.reduce((sum, index) => sum + nodes[index].share, 0);
    const joints = entries.map((index) => peak[nodes[index].face]);
    parts[part.ref] = {
      peakBodyMax: Math.max(...entries.map((index) => peak[index])),
      peakBodyMean: entries.reduce((sum, index) => sum + nodes[index].share * peak[index], 0) / weight,
      peakSkinMax: Math.max(...entries.map((index) => peakSkin[index])),
      peakJointMax: Math.max(...joints),
      peakJointMin: Math.min(...joints),
    };
  });
  return parts;
}
