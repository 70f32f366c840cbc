/** The strip along the top, ruled like the title block of a drawing: whose piece it is, the pages, and what can be done. */

import { IS_MAC } from '../parts/is-mac';
import { ariaShortcut, shortcutText } from '../parts/shortcut';
import { edit, useDocument } from '../state/document-store';
import { PAGE_NAMES, PAGES, showPage, type ThemeChoice, useView } from '../state/view-store';
import type { Command } from './command';
import { useIsEdited } from './use-window-events';

const TOOLS = ['open', 'open-recent', 'save', 'open-example', 'undo', 'redo', 'commands', 'orientation'];
/** Those that are found by their keys alone are shown with them. */
const WITH_KEYS = ['commands'];
const SHORT_LABELS: Readonly<Record<string, string>> = { orientation: 'Help' };
const THEMES: readonly { value: ThemeChoice; label: string }[] = [
  { value: 'system', label: 'Theme: auto' },
  { value: 'light', label: 'Theme: light' },
  { value: 'dark', label: 'Theme: dark' },
];

export function TitleBlock({ commandsNow }: { commandsNow: () => readonly Command[] }) {
  return (
    <header className="title-block">
      <p className="program">Ringtrue</p>
      <ProjectTitle />
      <Pages />
      <Tools commandsNow={commandsNow} />
    </header>
  );
}

function ProjectTitle() {
  const title = useDocument((state) => state.project.title);
  const edited = useIsEdited();
  return (
    <div className="project-title">
      <input
        aria-label="Title of the project"
        value={title}
        onChange={(event) => edit((project) => ({ ...project, title: event.target.value }))}
        spellCheck={false}
      />
      <span className="edited" aria-live="off">
        {edited ? 'not saved' : ''}
      </span>
    </div>
  );
}

function Pages() {
  const current = useView((view) => view.page);
  return (
    <nav className="pages" aria-label="Pages">
      {PAGES.map((page) => (
        <button
          key={page}
          type="button"
          className="page-link"
          aria-current={page === current ? 'page' : undefined}
          onClick={() => showPage(page)}
        >
          {PAGE_NAMES[page]}
        </button>
      ))}
    </nav>
  );
}

function Tools({ commandsNow }: { commandsNow: () => readonly Command[] }) {
  const theme = useView((view) => view.theme);
  // What can be undone changes with the project.
  useDocument((state) => state.project);
  return (
    <div className="tools">
      {commandsNow()
        .filter(({ id }) => TOOLS.includes(id))
        .map(({ id, label, shortcut, whyNot, run }) => (
          <button
            key={id}
            type="button"
            className="quiet"
            data-command={id}
            disabled={whyNot() !== null}
            onClick={() => void run()}
            {...(shortcut && { title: shortcutText(shortcut, IS_MAC), 'aria-keyshortcuts': ariaShortcut(shortcut) })}
          >
            {SHORT_LABELS[id] ?? label}
            {shortcut && WITH_KEYS.includes(id) && (
              <span className="shortcut" aria-hidden="true">
                {shortcutText(shortcut, IS_MAC)}
              </span>
            )}
          </button>
        ))}
      <select
        aria-label="Light or dark"
        className="theme-choice"
        value={theme}
        onChange={(event) => chooseTheme(event.target.value)}
      >
        {THEMES.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
    </div>
  );
}

function chooseTheme(value: string): void {
  const choice = THEMES.find((theme) => theme.value === value);
  if (choice) useView.setState({ theme: choice.value });
}
