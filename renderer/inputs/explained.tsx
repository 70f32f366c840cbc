/** A small "?" beside a head that opens what its word means, by pointer or key; Escape closes it and gives the focus back. */
import { memo } from 'react';
import { Button, Dialog, DialogTrigger, Popover } from 'react-aria-components';
import { TERMS, type Term, type TermName, termOfHead } from '../../sim/wording/terms';
import './explained.css';

export const Explained = memo(function Explained({ term }: { term: TermName }) {
  return <Explanation {...TERMS[term]} />;
});

/** The same for a head as it is shown; nothing where the head explains itself. */
export const ExplainedHead = memo(function ExplainedHead({ head }: { head: string }) {
  const term = termOfHead(head);
  return term && <Explanation {...term} />;
});

/** The head of a column, with what its word means where it needs it. */
export function ColumnHead({ head }: { head: string }) {
  return (
    <th scope="col">
      {head}
      <ExplainedHead head={head} />
    </th>
  );
}

function Explanation({ name, meaning }: Term) {
  return (
    <DialogTrigger>
      <Button className="field-help-button explained-button" aria-label={`About ${name}`}>
        ?
      </Button>
      <Popover className="explained" placement="bottom start">
        <Dialog aria-label={`About ${name}`} className="explained-words">
          <p>{meaning}</p>
        </Dialog>
      </Popover>
    </DialogTrigger>
  );
}
