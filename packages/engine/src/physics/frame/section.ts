import { inRange } from '../in-range.ts';

/** Properties of a cross-section; x is the axis across the depth, so that loads act along the depth. */
export interface Section {
  readonly area: number;
  readonly inertiaX: number;
  readonly inertiaY: number;
  readonly modulusX: number;
  readonly modulusY: number;
}

function sectionOf(area: number, inertiaX: number, inertiaY: number, depth: number, width: number): Section {
  return { area, inertiaX, inertiaY, modulusX: (2 * inertiaX) / depth, modulusY: (2 * inertiaY) / width };
}

/**
 * Rectangular tube with square corners, as aluminium is extruded.
 *
 * @formula I = (b h³ - b1 h1³)/12; S = 2 I/h
 * @param depth outside depth h [m] 0.005..2
 * @param width outside width b [m] 0.005..2
 * @param wall wall thickness [m] 0.0005..0.1
 * @result area area of metal [m2]
 * @result inertiaX second moment for loads along the depth [m4]
 * @result inertiaY second moment for loads along the width [m4]
 * @result modulusX section modulus for loads along the depth [m3]
 * @result modulusY section modulus for loads along the width [m3]
 * @valid square corners: for cold-formed steel tube it is 12 to 18 % unsafe, use roundedTubeSection
 * @throws RangeError when a parameter is outside its range
 * @source Section formula, checked by quadrature
 */
export function squareTubeSection(depth: number, width: number, wall: number): Section {
  inRange('depth', depth, 0.005, 2, 'm');
  inRange('width', width, 0.005, 2, 'm');
  inRange('wall', wall, 0.0005, Math.min(0.1, depth / 2, width / 2), 'm');
  const h = depth - 2 * wall;
  const b = width - 2 * wall;
  return sectionOf(
    depth * width - h * b,
    (width * depth ** 3 - b * h ** 3) / 12,
    (depth * width ** 3 - h * b ** 3) / 12,
    depth,
    width,
  );
}

/**
 * Cold-formed steel tube with rounded corners.
 *
 * @formula outer rounded rectangle (radius 2t) less inner (radius t); I = b h³/12 less four corner pieces
 * @param depth outside depth [m] 0.01..2
 * @param width outside width [m] 0.01..2
 * @param designWall design wall: 0.93 of the nominal wall [m] 0.0005..0.05
 * @result area area of metal [m2]
 * @result inertiaX second moment for loads along the depth [m4]
 * @result inertiaY second moment for loads along the width [m4]
 * @result modulusX section modulus for loads along the depth [m3]
 * @result modulusY section modulus for loads along the width [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Exact integration of rounded corners; reproduces the AISC Manual's 2.44, 4.49, 2.25, 1.48 for 4x2x1/4 (those from memory)
 */
export function roundedTubeSection(depth: number, width: number, designWall: number): Section {
  inRange('depth', depth, 0.01, 2, 'm');
  inRange('width', width, 0.01, 2, 'm');
  inRange('designWall', designWall, 0.0005, Math.min(0.05, depth / 4, width / 4), 'm');
  const t = designWall;
  const h = depth - 2 * t;
  const b = width - 2 * t;
  return sectionOf(
    roundedArea(depth, width, 2 * t) - roundedArea(h, b, t),
    roundedInertia(depth, width, 2 * t) - roundedInertia(h, b, t),
    roundedInertia(width, depth, 2 * t) - roundedInertia(b, h, t),
    depth,
    width,
  );
}

/** Share of the nominal wall that counts in cold-formed steel tube: AISC, from memory. */
export const DESIGN_WALL_SHARE = 0.93;

function roundedArea(depth: number, width: number, radius: number): number {
  return depth * width - (4 - Math.PI) * radius ** 2;
}

/** Second moment of a rounded rectangle: the full rectangle less what each rounded corner leaves out. */
function roundedInertia(depth: number, width: number, radius: number): number {
  const square = radius ** 4 / 12 + radius ** 2 * (depth / 2 - radius / 2) ** 2;
  const quarterOwn = (Math.PI / 16 - 4 / (9 * Math.PI)) * radius ** 4;
  const quarterArea = (Math.PI * radius ** 2) / 4;
  const quarterLever = depth / 2 - radius + (4 * radius) / (3 * Math.PI);
  return (width * depth ** 3) / 12 - 4 * (square - quarterOwn - quarterArea * quarterLever ** 2);
}

/**
 * Channel with parallel flanges.
 *
 * @formula I = t_w d³/12 + 2[(b_f - t_w) t_f³/12 + (b_f - t_w) t_f ((d - t_f)/2)²]
 * @param depth depth d [m] 0.01..2
 * @param flangeWidth width of a flange b_f [m] 0.005..1
 * @param webThickness thickness of the web t_w [m] 0.0005..0.1
 * @param flangeThickness thickness of a flange t_f [m] 0.0005..0.1
 * @result area area of metal [m2]
 * @result inertiaX second moment for loads along the depth [m4]
 * @result inertiaY second moment for loads along the width, about the centroid [m4]
 * @result modulusX section modulus for loads along the depth [m3]
 * @result modulusY least section modulus for loads along the width [m3]
 * @valid tapered flanges of rolled channels differ by some percent; a load off the shear centre twists the channel, which is not counted
 * @throws RangeError when a parameter is outside its range
 * @source Section formula
 */
export function channelSection(
  depth: number,
  flangeWidth: number,
  webThickness: number,
  flangeThickness: number,
): Section {
  inRange('depth', depth, 0.01, 2, 'm');
  inRange('flangeWidth', flangeWidth, 0.005, 1, 'm');
  inRange('webThickness', webThickness, 0.0005, Math.min(0.1, flangeWidth), 'm');
  inRange('flangeThickness', flangeThickness, 0.0005, Math.min(0.1, depth / 2), 'm');
  const lip = flangeWidth - webThickness;
  const flange = lip * flangeThickness;
  const web = depth * webThickness;
  const area = web + 2 * flange;
  const inertiaX =
    (webThickness * depth ** 3) / 12 +
    2 * ((lip * flangeThickness ** 3) / 12 + flange * ((depth - flangeThickness) / 2) ** 2);
  const lipMiddle = webThickness + lip / 2;
  const centroid = ((web * webThickness) / 2 + 2 * flange * lipMiddle) / area;
  const inertiaY =
    (depth * webThickness ** 3) / 12 +
    web * (centroid - webThickness / 2) ** 2 +
    2 * ((flangeThickness * lip ** 3) / 12 + flange * (lipMiddle - centroid) ** 2);
  return {
    area,
    inertiaX,
    inertiaY,
    modulusX: (2 * inertiaX) / depth,
    modulusY: inertiaY / Math.max(centroid, flangeWidth - centroid),
  };
}

/**
 * Round tube or bar.
 *
 * @formula I = π (D⁴ - d⁴)/64
 * @param outside outside diameter [m] 0.002..2
 * @param inside inside diameter, 0 for a bar; default 0 [m] 0..2
 * @result area area of metal [m2]
 * @result inertiaX second moment [m4]
 * @result inertiaY second moment [m4]
 * @result modulusX section modulus [m3]
 * @result modulusY section modulus [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Section formula
 */
export function roundSection(outside: number, inside = 0): Section {
  inRange('outside', outside, 0.002, 2, 'm');
  inRange('inside', inside, 0, outside * (1 - 1e-6), 'm');
  const inertia = (Math.PI * (outside ** 4 - inside ** 4)) / 64;
  return sectionOf((Math.PI * (outside ** 2 - inside ** 2)) / 4, inertia, inertia, outside, outside);
}

/**
 * Flat bar or solid rectangle.
 *
 * @formula I = b t³/12; S = b t²/6
 * @param depth size along the load [m] 0.001..2
 * @param width size across the load [m] 0.001..2
 * @result area area of metal [m2]
 * @result inertiaX second moment for loads along the depth [m4]
 * @result inertiaY second moment for loads along the width [m4]
 * @result modulusX section modulus for loads along the depth [m3]
 * @result modulusY section modulus for loads along the width [m3]
 * @throws RangeError when a parameter is outside its range
 * @source Section formula
 */
export function flatSection(depth: number, width: number): Section {
  inRange('depth', depth, 0.001, 2, 'm');
  inRange('width', width, 0.001, 2, 'm');
  return sectionOf(depth * width, (width * depth ** 3) / 12, (depth * width ** 3) / 12, depth, width);
}

/**
 * Mass of a bar per length.
 *
 * @formula m = ρ A
 * @param area area of metal [m2] 0..1
 * @param density density of the metal [kg/m3] 500..20000
 * @returns mass per length [kg/m]
 * @throws RangeError when a parameter is outside its range
 * @source Definition; steel 7850 kg/m3 (0.2836 lb/in3), aluminium 2713 kg/m3 (0.098 lb/in3), handbook, from memory
 */
export function massPerLength(area: number, density: number): number {
  inRange('area', area, 0, 1, 'm2');
  inRange('density', density, 500, 20000, 'kg/m3');
  return area * density;
}
