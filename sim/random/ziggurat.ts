import { normalCdf } from '../statistics/normal-distribution';

/**
 * Tables of the ziggurat that covers the half bell exp(−x²/2), x ≥ 0, with 256 layers of equal area. Layer 0 is the
 * base: a strip of height f(R) with the tail beyond R folded in; layer i above it reaches from the upright at 0 to
 * `edge[i]`, and the curve lies between `edge[i + 1]` and `edge[i]` there.
 *
 * Source: G. Marsaglia and W. W. Tsang, "The ziggurat method for generating random variables", J. Stat. Softw. 5 (2000)
 * no. 8; R to full precision from J. A. Doornik, "An improved ziggurat method to generate normal random samples" (2005).
 */
export const LAYERS = 256;

/** Where the tail begins. */
export const TAIL_START = 3.654152885361009;

const CANDIDATES = 2 ** 52;

const bell = (x: number): number => Math.exp(-0.5 * x * x);

/** Area of every layer: the base rectangle and the tail together. */
export const LAYER_AREA = TAIL_START * bell(TAIL_START) + Math.sqrt(2 * Math.PI) * normalCdf(-TAIL_START);

/** Widths of the layers, 257 numbers descending: `edge[0]` is the width the base would have as a rectangle, `edge[256]` is 0. */
export const edge = layerEdges();

/** Height of the curve at each edge, 257 numbers ascending to 1. */
export const height = Float64Array.from(edge, (x) => bell(x));

/** 512 numbers: what one candidate step is worth in each layer, the right half first, then the left half, negative. */
export const step = new Float64Array(2 * LAYERS);

/** 512 numbers: candidates below this lie wholly under the curve and need no further test. */
export const sure = new Float64Array(2 * LAYERS);

for (let layer = 0; layer < LAYERS; layer++) {
  step[layer] = edge[layer]! / CANDIDATES;
  step[layer + LAYERS] = -step[layer]!;
  sure[layer] = Math.floor((edge[layer + 1]! / edge[layer]!) * CANDIDATES);
  sure[layer + LAYERS] = sure[layer]!;
}

function layerEdges(): Float64Array {
  const edges = new Float64Array(LAYERS + 1);
  edges[0] = LAYER_AREA / bell(TAIL_START);
  edges[1] = TAIL_START;
  for (let layer = 2; layer < LAYERS; layer++) {
    const below = edges[layer - 1]!;
    edges[layer] = Math.sqrt(-2 * Math.log(LAYER_AREA / below + bell(below)));
  }
  return edges;
}
