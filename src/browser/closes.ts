/** What opens over a page closes again with Escape, or when one goes on elsewhere. Without a script its own handle closes it. */
export function closeWhenLeft(): void {
  const open = (): readonly HTMLDetailsElement[] => [
    ...document.querySelectorAll<HTMLDetailsElement>('[data-closes][open]'),
  ];
  document.addEventListener('keydown', ({ key }) => {
    if (key !== 'Escape') return;
    for (const details of open()) {
      if (details.contains(document.activeElement)) details.querySelector('summary')?.focus();
      details.open = false;
    }
  });
  for (const event of ['pointerdown', 'focusin'] as const)
    document.addEventListener(event, ({ target }) => {
      for (const details of open()) if (!details.contains(target as Node)) details.open = false;
    });
}
