// screens/picture_store.h: pictures for items to draw, made out of sight.
//
// Shape:   who asks gets what is known at once; Waiting: it is being made, came() follows. The
//          newest ask is made first; who asks anew, or drops, takes the older ask back.
// Sides:   up to 1280 px from the cache of small pictures; above that the file itself is decoded
//          and cut to the part that is looked at.
// Missing: of a file that is not here its preview stands in, where origins() names one that is
// here;
//          missed() tells who may fetch it.
// Memory:  64 MiB of pictures, the longest unused go first. What failed is asked again after
//          look_again().
// Threads: GUI; the pictures are made on a lane in the background, no file is opened elsewhere.
#pragma once

#include <QImage>
#include <QObject>
#include <QRectF>
#include <filesystem>
#include <functional>
#include <list>
#include <map>
#include <mutex>
#include <qqmlregistration.h>

#include "base/error.h"
#include "base/ids.h"
#include "engine/engine.h"
#include "engine/lane.h"

namespace jambline::screens {

// Where a picture comes from, for the time until its file is here.
struct PictureOrigin {
  std::optional<Hash> preview;  // the file of a small one
  QString device;               // "tablet 2"; "" this one
};

struct PictureAsk {
  Hash file;
  int side_px = 0;             // longest side of the whole picture
  QRectF part = {0, 0, 1, 1};  // of width and height; what is looked at
  bool checked = false;        // the file is hashed first, also when a small picture is there
  friend bool operator==(const PictureAsk&, const PictureAsk&) = default;
};

class PictureStore final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program")
 public:
  enum class State { Waiting, Here, NotHere, Damaged, Unreadable };
  Q_ENUM(State)
  struct Got {
    State state = State::Waiting;
    QImage image;  // of NotHere: the preview, where there is one
  };
  using Make = std::function<Result<QImage>(const PictureAsk& ask)>;

  static constexpr qsizetype usual_bytes = qsizetype{64} << 20;
  explicit PictureStore(Make make, qsizetype most_bytes = usual_bytes, QObject* parent = nullptr);
  ~PictureStore() override;

  // Of a shop's blobs (null: none), with small pictures kept in `cache`.
  static Make of(const blobs::BlobStore* blobs, const std::filesystem::path& cache);

  Got get(const PictureAsk& ask, const void* asker);
  void drop(const void* asker);
  void look_again();
  void set_origins(std::map<Hash, PictureOrigin> origins);
  QString device_of(const Hash& file) const;
  qsizetype bytes() const { return bytes_; }

 signals:
  void came(const jambline::Hash& file);
  void missed(const jambline::Hash& file);  // somebody looks at it, and it is not here

 private:
  struct Less {
    bool operator()(const PictureAsk& a, const PictureAsk& b) const;
  };
  struct Kept {
    Got got;
    std::list<PictureAsk>::iterator place;
  };
  struct Wanted {
    PictureAsk ask;
    std::uint64_t number;
  };
  void make_newest();
  void keep(const PictureAsk& ask, Result<QImage> made, const QImage& stand_in);
  void forget(std::map<PictureAsk, Kept, Less>::iterator at);

  Make make_;
  qsizetype most_bytes_;
  qsizetype bytes_ = 0;
  std::map<PictureAsk, Kept, Less> kept_;
  std::list<PictureAsk> used_;  // the latest first
  mutable std::mutex mutex_;    // guards the next four
  std::map<const void*, Wanted> wanted_;
  std::map<PictureAsk, int, Less> in_work_;
  std::map<Hash, PictureOrigin> origins_;
  std::uint64_t number_ = 0;
  engine::Lane lane_{engine::Lane::Place::Background};  // last: stops before the rest goes
};

}  // namespace jambline::screens
