/** Without a place there is no light to show: the outline of the year, and the way to the place. */
import { goToField } from '../store/goTo.ts';
import { showScreen } from '../store/screen.ts';

function goToPlace(): void {
  showScreen('plan');
  goToField('place', 'section-place');
}

export const NoPlace = () => (
  <section className="panel no-place" aria-labelledby="year-title">
    <header>
      <h2 id="year-title">The year’s light</h2>
    </header>
    <div className="row">
      <p>Sun and moon need a place on the map: latitude, longitude and time zone.</p>
      <button type="button" className="btn main" onClick={goToPlace}>
        Enter the place
      </button>
    </div>
    <div className="outlines" aria-hidden="true">
      {Array.from({ length: 12 }, (_, month) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: twelve months, always the same
        <div key={month} className="outline" />
      ))}
    </div>
  </section>
);
