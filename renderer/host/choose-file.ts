/**
 * Lets the person choose one file of their machine, in any browser. Must be called from a click or a key press.
 *
 * @returns null when they changed their mind
 */
export function chooseFile(): Promise<File | null> {
  return new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,application/json';
    input.hidden = true;
    const finish = () => {
      input.remove();
      resolve(input.files?.[0] ?? null);
    };
    input.addEventListener('change', finish, { once: true });
    input.addEventListener('cancel', finish, { once: true });
    // Some browsers forget an input that is not part of the page while its dialog is open.
    document.body.append(input);
    input.click();
  });
}
