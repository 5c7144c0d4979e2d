// Runs before the first paint, so that a dim page never flashes white at night.
(() => {
  const themes = { light: '#FAF8F3', dark: '#14181E', dim: '#070302' };
  let theme = null;
  try {
    theme = localStorage.getItem('escapement-theme');
  } catch {
    // Nothing is remembered: the system's preference counts.
  }
  if (!Object.hasOwn(themes, theme ?? '')) {
    theme = matchMedia('(prefers-color-scheme: dark)').matches ? 'dark' : 'light';
  }
  document.documentElement.dataset.theme = theme;
  document.querySelector('meta[name=theme-color]')?.setAttribute('content', themes[theme]);
})();
