#include "screens/shell_view_model.h"

#include "screens/words.h"

namespace jambline::screens {

namespace {
constexpr std::uint64_t undo_lasts_ms = 60'000;
}

ShellViewModel::ShellViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      sync_words_(margin_words({}, 0, {})),
      seen_(session.snapshot().last_act) {
  connect(&session, &Session::snapshotChanged, this, &ShellViewModel::take_snapshot);
  connect(&session, &Session::secondPassed, this, &ShellViewModel::second_passed);
  connect(&session, &Session::failed, this, &ShellViewModel::show);
  take_snapshot();
  second_passed();
}

void ShellViewModel::follow(SyncViewModel& sync) {
  const auto take = [this, &sync] {
    if (sync.marginWords() == sync_words_) return;
    sync_words_ = sync.marginWords();
    emit syncChanged();
  };
  connect(&sync, &SyncViewModel::changed, this, take);
  take();
}

void ShellViewModel::take_snapshot() {
  const auto& snapshot = session_.snapshot();
  if (snapshot.trouble != standing_) {
    standing_ = snapshot.trouble;
    emit bannerChanged();
  }
  if (snapshot.last_act == seen_) return;
  seen_ = snapshot.last_act;
  act_ = snapshot.last_act;
  since_ = session_.now();
  if (act_ && act_->command.is<acts::UndoAction>() && !words_.done.isEmpty()) {
    taken_back_ = !taken_back_;
  } else if (act_) {
    taken_back_ = false;
    words_ = words_of(*act_, session_.car(), session_.shop());
  }
  if (refused_) {
    refused_.reset();
    emit bannerChanged();
  }
  emit undoChanged();
}

void ShellViewModel::second_passed() {
  const Moment now = session_.now();
  const QString words = clock_words(now.wall_ms, session_.zone());
  if (words != wall_) {
    wall_ = words;
    emit wallChanged();
  }
  if (act_ && now.since_boot_ms - since_.since_boot_ms >= undo_lasts_ms) {
    act_.reset();
    emit undoChanged();
  }
}

void ShellViewModel::undo() {
  if (!undoPossible()) return;
  session_.post(acts::UndoAction{act_->entries});
}

void ShellViewModel::show(const Error& error) {
  refused_ = error;
  emit bannerChanged();
}

void ShellViewModel::closeBanner() {
  if (!refused_) return;
  refused_.reset();
  emit bannerChanged();
}

const Error* ShellViewModel::shown_error() const {
  if (refused_) return &*refused_;
  // That a device waits to be let in is no error: the floor and the margin show the digits.
  const bool asks =
      standing_ && standing_->code == Code::NotYet && standing_->subject == "admission";
  return standing_ && !asks ? &*standing_ : nullptr;
}

ErrorWords ShellViewModel::banner() const {
  const Error* error = shown_error();
  return error ? words_of(*error) : ErrorWords{};
}

QString ShellViewModel::bannerDetails() const {
  const Error* error = shown_error();
  if (!error) return {};
  const auto name = code_name(error->code);
  QStringList lines{QString::fromUtf8(name.data(), static_cast<qsizetype>(name.size())),
                    QString::fromStdString(error->operation),
                    QString::fromStdString(error->subject)};
  for (const auto& [arg, value] : error->args)
    lines << QStringLiteral("%1: %2").arg(QString::fromStdString(arg),
                                          QString::fromStdString(value));
  lines.removeAll(QString());
  return lines.join(QStringLiteral("\n"));
}

}  // namespace jambline::screens
