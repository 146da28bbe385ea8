import { hush, useProject } from '../store/project.js';

/** One line that says what happened and what can be done about it. */
export function NoticeBar() {
  const notice = useProject((p) => p.notice);
  return (
    <div className="notice-place" role="status" aria-live="polite">
      {notice && (
        <div className={`notice ${notice.tone}`}>
          <span>{notice.text}</span>
          {notice.actions?.map((a) => (
            <button type="button" key={a.label} onClick={a.run}>
              {a.label}
            </button>
          ))}
          <button type="button" aria-label="Close this message" onClick={hush}>
            ×
          </button>
        </div>
      )}
    </div>
  );
}
