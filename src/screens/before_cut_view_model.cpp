#include "screens/before_cut_view_model.h"

#include <algorithm>

#include "screens/correct_words.h"
#include "screens/gun_words.h"
#include "screens/state_kind.h"
#include "screens/words.h"

namespace jambline::screens {

namespace {
using job::CheckClass;
using job::CutAnswer;
using job::CutItem;

std::vector<CutItem> all_items() {
  std::vector<CutItem> stops;
  std::vector<CutItem> others;
  for (std::size_t i = 0; i < enum_words<CutItem>.size(); ++i) {
    const auto item = static_cast<CutItem>(i);
    (job::class_of(item) == CheckClass::Stop ? stops : others).push_back(item);
  }
  std::stable_sort(others.begin(), others.end(),
                   [](CutItem a, CutItem b) { return job::class_of(a) < job::class_of(b); });
  stops.insert(stops.end(), others.begin(), others.end());
  return stops;
}

std::optional<CutItem> item_of(const QString& key) {
  return from_word<CutItem>(key.toStdString());
}

QString key_of(CutItem item) {
  const std::string_view word = word_of(item);
  return QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size()));
}
}  // namespace

BeforeCutViewModel::BeforeCutViewModel(Session& session, QObject* parent)
    : QObject(parent),
      session_(session),
      items_({"key", "title", "classWords", "answerWords", "shape", "alarm", "spoken"}, this) {
  connect(&session_, &Session::carOrShopChanged, this, &BeforeCutViewModel::refresh);
  refresh();
}

const folds::BeforeCutView* BeforeCutViewModel::known() const {
  return session_.car() && session_.hasPerson() ? session_.car()->before_cut_of(session_.person())
                                                : nullptr;
}

bool BeforeCutViewModel::needed() const {
  if (!session_.car() || !session_.hasPerson()) return false;
  return !known() || known()->disputed;
}

const BeforeCutViewModel::Said* BeforeCutViewModel::said(CutItem item) const {
  const auto found = said_.find(item);
  return found == said_.end() ? nullptr : &found->second;
}

QStringList BeforeCutViewModel::never_cut() const {
  QStringList out;
  if (session_.car())
    for (const auto& panel : session_.car()->panels)
      if (!job::may_be_cut(panel.plan.finish))
        out << words_of(panel.plan.panel, session_.car()->body);
  return out;
}

bool BeforeCutViewModel::left_to_a_tap(CutItem item) const {
  return item == CutItem::Breaks || (item == CutItem::NotMatte && !never_cut().isEmpty());
}

int BeforeCutViewModel::left() const {
  int out = 0;
  for (const CutItem item : all_items())
    if (!said(item) && job::class_of(item) != CheckClass::Should) ++out;
  return out;
}

void BeforeCutViewModel::refresh() {
  const std::optional<JobId> job =
      session_.car() ? std::optional(session_.car()->job) : std::nullopt;
  if (job != job_ || session_.person() != person_) {
    job_ = job;
    person_ = session_.person();
    said_.clear();
    open_.reset();
  }
  std::vector<QVariantList> rows;
  for (const CutItem item : all_items()) {
    const CheckClass item_class = job::class_of(item);
    const Said* now = said(item);
    StateKind state = item_class == CheckClass::Should ? StateKind::NotYet : StateKind::Must;
    QString answer;
    if (now) {
      answer = now->answer == CutAnswer::Yes            ? tr("yes")
               : now->answer == CutAnswer::DoesNotApply ? tr("does not apply")
               : now->reason                            ? tr("no: %1").arg(words_of(*now->reason))
                                                        : tr("no");
      state = now->answer == CutAnswer::Yes            ? StateKind::Done
              : now->answer == CutAnswer::DoesNotApply ? StateKind::None
              : item_class == CheckClass::Should       ? StateKind::NotYet
                                                       : StateKind::Must;
    }
    const QString title = sentence(words_of(item));
    const QString stands = now ? answer : tr("not answered");
    const bool alarm = item_class != CheckClass::Should && (!now || now->answer == CutAnswer::No);
    rows.push_back({key_of(item), title, class_words(item_class), answer, shape_of(state), alarm,
                    tr("%1, %2, %3").arg(title, class_words(item_class), stands)});
  }
  items_.set(std::move(rows));
  emit changed();
  emit openChanged();
}

QString BeforeCutViewModel::title() const {
  return session_.hasPerson() ? tr("Before you cut, %1").arg(session_.personName())
                              : tr("Before you cut");
}

QString BeforeCutViewModel::leftWords() const {
  const int musts = left();
  if (musts == 0) return {};
  return musts == 1 ? tr("1 must left") : tr("%1 musts left").arg(musts);
}

bool BeforeCutViewModel::anyLeft() const {
  for (const CutItem item : all_items())
    if (!said(item) && !left_to_a_tap(item)) return true;
  return false;
}

QString BeforeCutViewModel::restWords() const {
  int count = 0;
  for (const CutItem item : all_items())
    if (!said(item) && !left_to_a_tap(item)) ++count;
  return said_.empty() ? tr("I looked: yes to these %1").arg(count)
                       : tr("I looked: yes to the other %1").arg(count);
}

bool BeforeCutViewModel::stopped() const {
  for (const auto& [item, one] : said_)
    if (job::class_of(item) == CheckClass::Stop && one.answer == CutAnswer::No) return true;
  return false;
}

QString BeforeCutViewModel::stopWords() const {
  if (stopped())
    return tr("Do not cut. Matte, textured or film is never sanded or polished. Tell the manager.");
  const QStringList never = never_cut();
  return never.isEmpty() ? QString()
                         : tr("Do not cut on this car: %1.").arg(never.join(QStringLiteral(", ")));
}

QString BeforeCutViewModel::mainText() const {
  if (!session_.hasPerson()) return tr("Say who you are first");
  if (stopped()) return tr("Do not cut");
  if (left() == 1) return tr("Cutting waits for 1 must");
  if (left() > 1) return tr("Cutting waits for %1 musts").arg(left());
  return tr("Keep these answers");
}

QString BeforeCutViewModel::mainSecond() const {
  if (stopped()) return tr("no way round a stop");
  return left() > 0 ? QString() : tr("then the first round");
}

bool BeforeCutViewModel::mainWaits() const {
  return !session_.car() || !session_.hasPerson() || stopped() || left() > 0;
}

QString BeforeCutViewModel::knownWords() const {
  const auto* now = known();
  if (!now) return {};
  if (now->disputed) return tr("Two answers of yours stand. Answer anew.");
  return tr("You answered this at %1. Answer again where something changed.")
      .arg(time_words(now->wall_ms, session_.now().wall_ms, session_.zone()));
}

std::vector<BeforeCutViewModel::Choice> BeforeCutViewModel::choices(CutItem item) const {
  std::vector<Choice> out{{tr("Yes"), {CutAnswer::Yes, std::nullopt}}};
  if (job::may_not_apply(item))
    out.push_back({tr("Does not apply"), {CutAnswer::DoesNotApply, std::nullopt}});
  if (job::class_of(item) != CheckClass::Must) {
    out.push_back({job::class_of(item) == CheckClass::Stop ? tr("No: do not cut") : tr("No"),
                   {CutAnswer::No, std::nullopt}});
    return out;
  }
  for (std::size_t i = 0; i < enum_words<job::OverrideReason>.size(); ++i) {
    const auto reason = static_cast<job::OverrideReason>(i);
    out.push_back({tr("No: %1").arg(words_of(reason)), {CutAnswer::No, reason}});
  }
  return out;
}

QString BeforeCutViewModel::openTitle() const {
  return open_ ? sentence(words_of(*open_)) : QString();
}

QStringList BeforeCutViewModel::openAnswers() const {
  QStringList out;
  if (open_)
    for (const Choice& choice : choices(*open_)) out << choice.words;
  return out;
}

int BeforeCutViewModel::openAnswer() const {
  const Said* now = open_ ? said(*open_) : nullptr;
  if (!now) return -1;
  const auto all = choices(*open_);
  for (std::size_t i = 0; i < all.size(); ++i)
    if (all[i].said.answer == now->answer && all[i].said.reason == now->reason)
      return static_cast<int>(i);
  return -1;
}

void BeforeCutViewModel::ask() {
  said_.clear();
  open_.reset();
  refresh();
  emit asked();
}

void BeforeCutViewModel::press(const QString& key) {
  const auto item = item_of(key);
  if (!item) return;
  if (said(*item)) {
    open(key);
    return;
  }
  said_[*item] = {CutAnswer::Yes, std::nullopt};
  refresh();
}

void BeforeCutViewModel::open(const QString& key) {
  const auto item = item_of(key);
  if (!item) return;
  open_ = item;
  emit openChanged();
  emit opened();
}

void BeforeCutViewModel::choose(int answer) {
  if (!open_) return;
  const auto all = choices(*open_);
  if (answer < 0 || answer >= static_cast<int>(all.size())) return;
  said_[*open_] = all[static_cast<std::size_t>(answer)].said;
  refresh();
}

void BeforeCutViewModel::answerTheRest() {
  for (const CutItem item : all_items())
    if (!said(item) && !left_to_a_tap(item)) said_[item] = {CutAnswer::Yes, std::nullopt};
  refresh();
}

void BeforeCutViewModel::keep() {
  if (mainWaits()) return;
  std::vector<job::CutCheck> checks;
  for (const auto& [item, one] : said_) checks.push_back({item, one.answer, one.reason});
  session_.post(acts::AnswerBeforeCut{session_.car()->job, std::move(checks)},
                [this](const Result<engine::Wrote>& wrote) {
                  if (wrote || wrote.error().code == Code::AlreadyDone) emit done();
                });
}

}  // namespace jambline::screens
