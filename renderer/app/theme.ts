/** Light or dark: the machine's own wish unless the person chose. */
import { useEffect } from 'react';
import { useView } from '../state/view-store';

export function useThemeOnDocument(): void {
  const theme = useView((view) => view.theme);
  useEffect(() => {
    if (theme === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = theme;
  }, [theme]);
}
