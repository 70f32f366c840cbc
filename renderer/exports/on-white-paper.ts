/**
 * Does something while the page has the light theme's colours on white, whatever theme is on the screen: pictures go
 * onto paper. Nothing of it is seen, since the browser does not draw before it is over.
 */
export function onWhitePaper<Outcome>(make: () => Outcome): Outcome {
  const { dataset, style } = document.documentElement;
  const theme = dataset.theme;
  dataset.theme = 'light';
  for (const ground of ['--paper', '--sheet']) style.setProperty(ground, '#ffffff');
  try {
    return make();
  } finally {
    for (const ground of ['--paper', '--sheet']) style.removeProperty(ground);
    if (theme === undefined) delete dataset.theme;
    else dataset.theme = theme;
  }
}
