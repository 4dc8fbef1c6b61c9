// Runs before the first paint, so that a page chosen dark never flashes light.
(() => {
  const choice = localStorage.getItem('duskline-light');
  if (choice === 'day' || choice === 'night') {
    document.documentElement.dataset.light = choice;
  }
})();
