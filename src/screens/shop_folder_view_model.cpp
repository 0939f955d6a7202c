#include "screens/shop_folder_view_model.h"

#include <QCoreApplication>
#include <QDateTime>
#include <QPointer>
#include <QTimeZone>
#include <QUrl>

#include "screens/words.h"

namespace jambline::screens {

namespace {
// The engine's calls come on the work lane and may outlive the screen.
template <class Use>
void on_gui_thread(const QPointer<ShopFolderViewModel>& screen, Use use) {
  QMetaObject::invokeMethod(
      QCoreApplication::instance(),
      [screen, use = std::move(use)] {
        if (screen) use();
      },
      Qt::QueuedConnection);
}

std::filesystem::path folder_path_of(const QString& typed) {
  const QString text = typed.trimmed();
  const QUrl url(text);
  return (url.isLocalFile() ? url.toLocalFile() : text).toStdString();
}
}  // namespace

ShopFolderViewModel::ShopFolderViewModel(Session& session, QString place, QObject* parent)
    : QObject(parent), session_(session), place_(std::move(place)) {}

ShopFolderViewModel::~ShopFolderViewModel() {
  stop_.request_stop();
}

engine::Engine::Progress ShopFolderViewModel::on_progress() {
  const QPointer<ShopFolderViewModel> self(this);
  return [self, this](double part_done) {
    on_gui_thread(self, [this, part_done] {
      progress_ = part_done;
      emit changed();
    });
  };
}

void ShopFolderViewModel::begin(const QString& what) {
  stop_ = std::stop_source();
  busy_ = true;
  progress_ = 0;
  what_ = what;
  kept_.clear();
  todo_.clear();
  emit changed();
}

void ShopFolderViewModel::end(const QString& what, const QString& kept, const QString& todo) {
  busy_ = false;
  what_ = what;
  kept_ = kept;
  todo_ = todo;
  emit changed();
}

void ShopFolderViewModel::end(const Error& error) {
  if (error.code == Code::Stopped)
    return end(tr("Stopped before the end."),
               tr("What had come in by then stays; the shop is whole."),
               tr("Begin again when there is time; a half-written export can be thrown away."));
  const ErrorWords words = words_of(error);
  end(words.what, words.kept, words.todo);
}

void ShopFolderViewModel::exportTo(const QString& place) {
  if (busy_) return;
  const auto day =
      QDateTime::fromMSecsSinceEpoch(session_.now().wall_ms, QTimeZone(session_.zone().toLatin1()));
  const std::filesystem::path folder =
      folder_path_of(place) /
      (tr("Jambline") + day.toString(QStringLiteral(" yyyy-MM-dd HHmmss"))).toStdString();
  begin(tr("Writing the shop to a folder"));
  const QPointer<ShopFolderViewModel> self(this);
  session_.engine().export_shop(folder, stop_.get_token(), on_progress(),
                                [self, this, folder](Result<log::Exported> done) {
                                  on_gui_thread(self, [this, folder, done = std::move(done)] {
                                    if (!done) return end(done.error());
                                    end(tr("%1 entries are in %2")
                                            .arg(done->entries)
                                            .arg(QString::fromStdString(folder.string())),
                                        tr("The shop on this device is as it was."),
                                        tr("Keep a copy away from this device. Without its "
                                           "device.key a copy can be read, not written on."));
                                  });
                                });
}

void ShopFolderViewModel::importFrom(const QString& folder) {
  if (busy_ || folder.trimmed().isEmpty()) return;
  begin(tr("Taking entries in"));
  const QPointer<ShopFolderViewModel> self(this);
  session_.engine().import_shop(
      folder_path_of(folder), stop_.get_token(), on_progress(),
      [self, this](Result<log::Imported> done) {
        on_gui_thread(self, [this, done = std::move(done)] {
          if (!done) return end(done.error());
          if (done->refused.empty())
            return end(
                tr("%1 entries are new here, from %2 files").arg(done->entries).arg(done->files),
                tr("Every one passed the checks."), {});
          const ErrorWords words = words_of(done->refused.front().second);
          end(tr("%1 entries are new here; %2 files were refused")
                  .arg(done->entries)
                  .arg(done->refused.size()),
              tr("What was refused changed nothing. The first, %1: %2")
                  .arg(QString::fromStdString(done->refused.front().first), words.what),
              words.todo);
        });
      });
}

}  // namespace jambline::screens
