/** The cautions in full, in the order of the work; on the page Piece and in the maker’s report. */
import type { Method, Project } from '../../sim/project/document';
import { cautionGroups, FIRST_CAUTION, shortHoldWarning } from '../../sim/wording/cautions';
import './caution-groups.css';
import { lengthsOnOneLine } from './lengths-on-one-line';

interface CautionGroupsProps {
  /** One that can be computed. */
  project: Project;
  methods: readonly Method[];
}

export function CautionGroups({ project, methods }: CautionGroupsProps) {
  return (
    <>
      <p>
        <strong>{FIRST_CAUTION}</strong>
      </p>
      <div className="caution-groups">
        {cautionGroups(project, methods).map(({ title, sentences }) => (
          <div key={title}>
            <h3>{title}</h3>
            <ul>
              {sentences.map((sentence) => (
                <li key={sentence}>{lengthsOnOneLine(sentence)}</li>
              ))}
            </ul>
          </div>
        ))}
      </div>
    </>
  );
}

interface ShortHoldProps {
  project: Project;
  /** Whether it is spoken at once; paper is silent. */
  isSpoken?: boolean;
}

/** Said as loud as can be where the hold length endangers fingers; else nothing. */
export function ShortHold({ project, isSpoken = false }: ShortHoldProps) {
  const warning = shortHoldWarning(project);
  return warning === null ? null : (
    <p className="danger" role={isSpoken ? 'alert' : undefined}>
      {lengthsOnOneLine(warning)}
    </p>
  );
}
