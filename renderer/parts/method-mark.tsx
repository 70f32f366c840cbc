/** The one mark a method has everywhere: a colour, a shape and a letter, by its place in the project. */
interface Shape {
  colour: string;
  /** In a square of 12 by 12. */
  path: string;
}

const LETTER_A = 65;

const SHAPES: readonly [Shape, ...Shape[]] = [
  { colour: 'var(--mark-a)', path: 'M6 1a5 5 0 1 1 0 10a5 5 0 1 1 0-10z' },
  { colour: 'var(--mark-b)', path: 'M1.5 1.5h9v9h-9z' },
  { colour: 'var(--mark-c)', path: 'M6 .8L11.5 10.6H.5z' },
  { colour: 'var(--mark-d)', path: 'M6 .2L11.8 6L6 11.8L.2 6z' },
  { colour: 'var(--mark-e)', path: 'M6 11.2L.5 1.4h11z' },
  { colour: 'var(--mark-f)', path: 'M4 .8h4v3.2h3.2v4H8v3.2H4V8H.8V4H4z' },
];

export interface Mark extends Shape {
  letter: string;
}

export function markOf(index: number): Mark {
  const shape = SHAPES[index % SHAPES.length] ?? SHAPES[0];
  return { ...shape, letter: String.fromCodePoint(LETTER_A + index) };
}

/** The shape alone; the letter or the name always stands beside it. */
export function MethodMark({ index }: { index: number }) {
  const { colour, path } = markOf(index);
  return (
    <svg className="method-mark" viewBox="0 0 12 12" aria-hidden="true" focusable="false">
      <path d={path} fill={colour} />
    </svg>
  );
}

/** Mark, letter and name, as it stands in lists, tables and at line ends. */
export function MethodLabel({ index, name }: { index: number; name: string }) {
  return (
    <span className="method-label">
      <MethodMark index={index} />
      <span className="method-letter">{markOf(index).letter}</span>
      <span className="method-name">{name}</span>
    </span>
  );
}
