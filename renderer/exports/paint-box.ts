/** The ground and the edges of one element of the page, as shapes. */
import { paintOf, svgElement } from './svg-attributes';

const SIDES = ['top', 'right', 'bottom', 'left'] as const;
type Side = (typeof SIDES)[number];

interface Edge {
  side: Side;
  widthPx: number;
  colour: string;
  isDashed: boolean;
}

const pixels = (text: string): number => Number.parseFloat(text) || 0;

function edgesOf(style: CSSStyleDeclaration): Edge[] {
  return SIDES.flatMap((side): Edge[] => {
    const widthPx = pixels(style.getPropertyValue(`border-${side}-width`));
    const line = style.getPropertyValue(`border-${side}-style`);
    const { colour, opacity } = paintOf(style.getPropertyValue(`border-${side}-color`));
    if (widthPx === 0 || line === 'none' || opacity === 0) return [];
    return [{ side, widthPx, colour, isDashed: line === 'dashed' }];
  });
}

function edgeLine({ side, widthPx, colour, isDashed }: Edge, box: DOMRect): SVGElement {
  const half = widthPx / 2;
  const across = side === 'top' ? box.top + half : box.bottom - half;
  const down = side === 'left' ? box.left + half : box.right - half;
  const isLevel = side === 'top' || side === 'bottom';
  return svgElement('line', {
    ...(isLevel
      ? { x1: box.left, y1: across, x2: box.right, y2: across }
      : { x1: down, y1: box.top, x2: down, y2: box.bottom }),
    stroke: colour,
    'stroke-width': widthPx,
    'stroke-dasharray': isDashed ? `${3 * widthPx} ${2 * widthPx}` : undefined,
  });
}

/** Nothing for an element without ground and edges. Places are the window's own. */
export function paintBox(style: CSSStyleDeclaration, box: DOMRect): SVGElement[] {
  const ground = paintOf(style.backgroundColor);
  const isRound = style.borderTopLeftRadius.endsWith('%');
  const radius = isRound ? Math.min(box.width, box.height) / 2 : pixels(style.borderTopLeftRadius);
  const shapes =
    ground.opacity > 0 && box.width > 0 && box.height > 0
      ? [
          svgElement('rect', {
            x: box.left,
            y: box.top,
            width: box.width,
            height: box.height,
            rx: radius > 0 ? radius : undefined,
            fill: ground.colour,
            'fill-opacity': ground.opacity < 1 ? ground.opacity : undefined,
          }),
        ]
      : [];
  return [...shapes, ...edgesOf(style).map((edge) => edgeLine(edge, box))];
}
