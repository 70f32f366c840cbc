/** Making SVG by hand: elements, attributes without needless digits, and colours that every program understands. */
const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

export type Attributes = Readonly<Record<string, string | number | undefined>>;

const DECIMALS = 2;

export function setAttributes(element: Element, attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === undefined) continue;
    element.setAttribute(name, typeof value === 'number' ? `${Number(value.toFixed(DECIMALS))}` : value);
  }
}

export function svgElement(name: string, attributes: Attributes = {}, text?: string): SVGElement {
  const element = document.createElementNS(SVG_NAMESPACE, name) as SVGElement;
  setAttributes(element, attributes);
  if (text !== undefined) element.textContent = text;
  return element;
}

/** A colour as older programs want it: how much it covers stands beside it. */
export interface Paint {
  colour: string;
  /** 0 for what is not seen at all. */
  opacity: number;
}

/** @param computed a colour as the browser computes it; anything but rgb() is kept as it is */
export function paintOf(computed: string): Paint {
  const [, channels = '', alpha] = /^rgba?\(([\d.]+, [\d.]+, [\d.]+)(?:, ([\d.]+))?\)$/.exec(computed) ?? [];
  if (channels === '') return { colour: computed, opacity: computed === 'none' ? 0 : 1 };
  const hex = channels.split(', ').map((channel) => Math.round(Number(channel)).toString(16).padStart(2, '0'));
  return { colour: `#${hex.join('')}`, opacity: alpha === undefined ? 1 : Number(alpha) };
}
