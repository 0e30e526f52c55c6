/** What was typed or chosen in the field behind an event. */
export function valueOf(event: Event): string {
  const { target } = event;
  return target instanceof HTMLSelectElement || target instanceof HTMLInputElement ? target.value : '';
}

export function isOn(event: Event): boolean {
  return event.target instanceof HTMLInputElement && event.target.checked;
}
