/** Where the light would stand, for a plan that has no place yet. */
export function NoSky() {
  return (
    <div className="run-row run-no-sky">
      <div className="run-plot">
        <h3 className="run-title">Sky</h3>
        <p className="no-sky-words">
          This plan has no place yet. Give it one under Place &amp; light, and its sun and twilight show here.
        </p>
      </div>
      <div className="run-readings" />
    </div>
  );
}
