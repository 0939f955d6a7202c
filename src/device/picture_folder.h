// device/picture_folder.h: a folder whose new pictures are offered, such as a camera's card.
//
// Shape:   found() once for every file that ends in .jpg, .jpeg or .png (any case), is directly in
//          the folder, and whose size and time stood still for half a second. Files that were there
//          when watching began are not offered, unless offer_all() asks for them. A file that is
//          written over counts as new. One of no bytes gets five seconds: some cameras make it
//          first.
// Card:    gone() when the folder goes, and when it is not there at first; back() when it is there.
//          What it did not hold before is found then. When it was not there at first, all is new.
// Threads: GUI thread; the folder is listed on a thread of its own, every quarter of a second, and
//          less often where that takes long.
#pragma once

#include <QElapsedTimer>
#include <QObject>
#include <QString>
#include <QThreadPool>
#include <QTimer>
#include <map>
#include <set>
#include <utility>
#include <vector>

namespace jambline::device {

class PictureFolder : public QObject {
  Q_OBJECT
 public:
  explicit PictureFolder(QObject* parent = nullptr);
  ~PictureFolder() override;

  void watch(const QString& folder);  // one at a time; the same folder again: nothing happens
  void stop();
  void offer_all();  // also those that were there before and were not found yet
  QString folder() const { return folder_; }
  bool here() const { return here_; }  // false before the first listing

 signals:
  void found(const QString& file);
  void gone();
  void back();  // the folder is there, for the first time or again

 private:
  struct Look {  // of one file
    qint64 size_bytes = 0;
    qint64 changed_ms = 0;
    friend auto operator<=>(const Look&, const Look&) = default;
  };
  struct Waiting {
    Look look;
    qint64 since_ms = 0;
  };
  struct Listing {
    bool here = false;
    qint64 took_ms = 0;
    std::map<QString, Look> files;
  };
  static Listing list(const QString& folder);
  void ask();
  void take_in(const Listing& listing);

  QString folder_;
  std::uint64_t watching_ = 0;  // grows: what comes of an earlier folder is dropped
  bool listed_ = false;
  bool here_ = false;
  bool all_ = false;
  std::map<QString, Look> known_;  // found, or there before
  std::set<QString> before_;       // there before, not found
  std::map<QString, Waiting> waiting_;
  QElapsedTimer clock_;
  QTimer tick_;
  QThreadPool lane_;
};

}  // namespace jambline::device
