/** What a method does not do as the one it is held against: said in words, with a sign that needs no colour. */
import type { Method } from '../../../sim/project/document';
import {
  type ComparedPart,
  methodDifferences,
  methodFigureText,
  type PartDifference,
} from '../../../sim/wording/method-differences';
import { useDocument } from '../../state/document-store';
import type { MethodSection } from '../../state/edits';
import { useView } from '../../state/view-store';

export function figureValue(method: Method, section: MethodSection, key: string): number | string | null {
  const figures: object = method[section];
  const found = Object.entries(figures).find(([name]) => name === key)?.[1];
  return typeof found === 'number' || typeof found === 'string' ? found : null;
}

/** The method that the others are held against; null where that is wanted of none, or it is gone. */
export function useHeldAgainst(): Method | null {
  const name = useView((view) => view.differsFrom);
  return useDocument(({ project }) => project.methods.find((method) => method.name === name) ?? null);
}

/** null where the part is alike, or nothing is held against anything. */
export function usePartDifference(method: Method, part: ComparedPart): PartDifference | null {
  const other = useHeldAgainst();
  if (other === null || other.name === method.name) return null;
  return methodDifferences(method, other).find((difference) => difference.part === part) ?? null;
}

/** "≠ 0.5° in “Fixed stop”"; null where the figure is alike. */
export function useFigureDifference(method: Method, section: MethodSection, key: string): string | null {
  const other = useHeldAgainst();
  const display = useDocument((state) => state.project.display);
  if (other === null || other.name === method.name) return null;
  const value = figureValue(other, section, key);
  if (value === figureValue(method, section, key)) return null;
  return `≠ ${methodFigureText(`${section}.${key}`, value, display)} in “${other.name}”`;
}

/** Under a choice: what the other method chose, or how many figures behind the same choice are not alike. */
export function DiffersFrom({ difference }: { difference: PartDifference | null }) {
  const other = useHeldAgainst();
  if (difference === null || other === null) return null;
  const { chosen, keys } = difference;
  const figures = keys.length === 1 ? '1 figure' : `${keys.length} figures`;
  return (
    <p className="differs">≠ {chosen ? `“${other.name}”: ${chosen.other}` : `${figures} not as in “${other.name}”`}</p>
  );
}
