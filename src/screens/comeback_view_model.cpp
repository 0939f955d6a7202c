#include "screens/comeback_view_model.h"

#include "screens/words.h"

namespace jambline::screens {

namespace {
QStringList sentences(QStringList words) {
  for (QString& one : words) one = sentence(one);
  return words;
}
}  // namespace

ComebackViewModel::ComebackViewModel(Session& session, QObject* parent)
    : QObject(parent), session_(session), panels_({"key", "title", "chosen"}, this) {
  connect(&session, &Session::carOrShopChanged, this, &ComebackViewModel::refresh);
  refresh();
}

QStringList ComebackViewModel::said_complaints() {
  return {tr("dirt or a nib"),      tr("haze or swirls"),       tr("gloss went dull"),
          tr("run or orange peel"), tr("color does not match"), tr("paint chips or peels"),
          tr("gap or flush"),       tr("wind noise"),           tr("water leak"),
          tr("warning lamp"),       tr("rattle or loose trim"), tr("something else")};
}

QStringList ComebackViewModel::said_payers() {
  return {tr("the shop"), tr("the customer"), tr("the insurer"), tr("the paint maker"),
          tr("not settled yet")};
}

QStringList ComebackViewModel::complaints() const {
  return sentences(said_complaints());
}

QStringList ComebackViewModel::payers() const {
  return sentences(said_payers());
}

bool ComebackViewModel::possible() const {
  const auto* car = session_.car();
  return car && car->delivered_ms && !session_.readOnly() && car->unknown_entries == 0;
}

void ComebackViewModel::refresh() {
  const auto* car = session_.car();
  const auto job = car ? std::optional(car->job) : std::nullopt;
  if (job != job_ || !possible()) {
    complaint_ = -1;
    payer_ = -1;
    more_.clear();
    panel_.reset();
  }
  job_ = job;
  show_panels();
  emit changed();
}

void ComebackViewModel::show_panels() {
  std::vector<QVariantList> rows;
  if (const auto* car = session_.car())
    for (const auto& panel : car->panels) {
      const auto word = word_of(panel.plan.panel);
      rows.push_back({QString::fromUtf8(word.data(), static_cast<qsizetype>(word.size())),
                      sentence(words_of(panel.plan.panel, car->body)), panel_ == panel.plan.panel});
    }
  panels_.set(std::move(rows));
}

QString ComebackViewModel::deliveredWords() const {
  const auto* car = session_.car();
  if (!car || !car->delivered_ms) return {};
  return tr("Delivered %1")
      .arg(time_words(*car->delivered_ms, session_.now().wall_ms, session_.zone()));
}

QString ComebackViewModel::words() const {
  const QString typed = more_.trimmed();
  if (complaint_ < 0) return typed;
  const QString chosen = said_complaints().at(complaint_);
  if (typed.isEmpty()) return chosen;
  return complaint_ == said_complaints().size() - 1 ? typed : tr("%1: %2").arg(chosen, typed);
}

QString ComebackViewModel::mainSecond() const {
  if (!session_.hasPerson()) return tr("say who you are first");
  if (words().isEmpty() ||
      (complaint_ == said_complaints().size() - 1 && more_.trimmed().isEmpty()))
    return tr("waits for what the customer says");
  return tr("hours on it count as a comeback's");
}

bool ComebackViewModel::mainWaits() const {
  return !session_.hasPerson() || words().isEmpty() ||
         (complaint_ == said_complaints().size() - 1 && more_.trimmed().isEmpty());
}

void ComebackViewModel::setMore(const QString& typed) {
  if (typed == more_) return;
  more_ = typed;
  emit changed();
}

void ComebackViewModel::sayComplaint(int row) {
  complaint_ = row == complaint_ ? -1 : row;
  emit changed();
}

void ComebackViewModel::sayPanel(const QString& key) {
  const auto panel = from_word<job::Panel>(key.toStdString());
  panel_ = panel == panel_ ? std::nullopt : panel;
  show_panels();
  emit changed();
}

void ComebackViewModel::sayPayer(int row) {
  payer_ = row == payer_ ? -1 : row;
  emit changed();
}

void ComebackViewModel::keep() {
  if (!possible() || mainWaits()) return;
  session_.post(
      acts::SayCameBack{session_.car()->job, words().toStdString(), panel_,
                        payer_ < 0 ? std::string() : said_payers().at(payer_).toStdString()},
      [this](const Result<engine::Wrote>& wrote) {
        if (wrote) emit cameBack();
      });
}

}  // namespace jambline::screens
