/** Leaves a field, so that single keys work on the board again; Tab goes on from where one was. */
export function leave(target: EventTarget | null): void {
  if (target instanceof HTMLElement) target.blur();
}
