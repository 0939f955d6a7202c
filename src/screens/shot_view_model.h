// screens/shot_view_model.h: taking one picture after another, each judged at once.
//
// Camera:  on only while `front` is true; the screen sets it.
// Steps:   Aim: the shutter acts. Busy: a picture is looked at or kept. Poor: it waits for "Take
//          again" (which presses the shutter by itself) or "Keep it anyway". Edges: it is kept, and
//          its edges are asked for. Offered: one of a file or a watched folder, kept when a person
//          says so. Unsaved: keeping it failed; it waits. A good one of the camera is kept by
//          itself, and the next missing shot of the stage comes.
// Lost:    nothing: a picture that waits stays with its own place, whatever is opened meanwhile,
//          until it is kept or dropped.
// Threads: GUI thread. Errors go to Session::failed, those of one picture also to `noticeWhat`.
#pragma once

#include <QImage>
#include <QList>
#include <QObject>
#include <QUrl>
#include <deque>
#include <optional>
#include <qqmlregistration.h>
#include <set>

#include "device/camera.h"
#include "device/picture_folder.h"
#include "folds/shots_of_car.h"
#include "screens/picture_intake.h"
#include "screens/row_list.h"
#include "screens/session.h"
#include "screens/words.h"

namespace jambline::screens {

class ShotViewModel final : public QObject {
  Q_OBJECT
  QML_ELEMENT
  QML_UNCREATABLE("Made by the program and handed to Shot")
  Q_PROPERTY(jambline::device::Camera* camera READ camera CONSTANT)
  Q_PROPERTY(bool front READ front WRITE setFront NOTIFY changed)
  Q_PROPERTY(Step step READ step NOTIFY changed)
  // Of the shot that is taken, or of the picture that waits.
  Q_PROPERTY(QString title READ title NOTIFY changed)
  Q_PROPERTY(QString countWords READ countWords NOTIFY changed)  // "6 of 14"
  Q_PROPERTY(QString stand READ stand NOTIFY changed)
  Q_PROPERTY(int view READ view NOTIFY changed)  // job::ShotView; -1 none
  Q_PROPERTY(QImage ghost READ ghost NOTIFY ghostChanged)
  Q_PROPERTY(QString ghostWords READ ghostWords NOTIFY ghostChanged)
  Q_PROPERTY(bool live READ live NOTIFY changed)  // the camera shows what it sees, or soon does
  // Why no picture can be taken here; "" it can.
  Q_PROPERTY(QString troubleWhat READ troubleWhat NOTIFY changed)
  Q_PROPERTY(QString troubleKept READ troubleKept NOTIFY changed)
  Q_PROPERTY(bool canRestart READ canRestart NOTIFY changed)
  // What became of the last picture, if it was not kept; "" nothing to say.
  Q_PROPERTY(QString noticeWhat READ noticeWhat NOTIFY changed)
  Q_PROPERTY(QString noticeTodo READ noticeTodo NOTIFY changed)
  Q_PROPERTY(QImage preview READ preview NOTIFY changed)
  Q_PROPERTY(QString judgedWord READ judgedWord NOTIFY changed)
  Q_PROPERTY(QString judgedAdvice READ judgedAdvice NOTIFY changed)
  Q_PROPERTY(bool judgedGood READ judgedGood NOTIFY changed)
  // Roles: key, title, value and limit (0 to 1), out, spoken.
  Q_PROPERTY(QAbstractItemModel* measures READ measures CONSTANT)
  Q_PROPERTY(QAbstractItemModel* edgeKinds READ edgeKinds CONSTANT)  // key, title, picked
  Q_PROPERTY(bool several READ several WRITE setSeveral NOTIFY changed)
  Q_PROPERTY(Main mainAct READ mainAct NOTIFY changed)
  Q_PROPERTY(QString mainText READ mainText NOTIFY changed)
  Q_PROPERTY(QString mainSecond READ mainSecond NOTIFY changed)
  Q_PROPERTY(int offerCount READ offerCount NOTIFY changed)  // with the one that is shown
  Q_PROPERTY(QString offerWords READ offerWords NOTIFY changed)
  Q_PROPERTY(bool watching READ watching NOTIFY changed)
  Q_PROPERTY(QString watchWords READ watchWords NOTIFY changed)
  Q_PROPERTY(jambline::screens::PictureIntake* intake READ intake CONSTANT)

 public:
  enum class Step { Aim, Busy, Poor, Edges, Offered, Unsaved };
  Q_ENUM(Step)
  // Wait: nothing can be pressed, mainText says why.
  enum class Main { Shutter, Files, Wait, Again, Save, Clean, KeepFinds, Keep, Leave };
  Q_ENUM(Main)

  ShotViewModel(Session& session, PictureIntake& intake, device::Camera& camera,
                QObject* parent = nullptr);
  ~ShotViewModel() override;

  device::Camera* camera() const { return &camera_; }
  bool front() const { return front_; }
  void setFront(bool front);
  Step step() const { return step_; }
  QString title() const;
  QString countWords() const;
  QString stand() const;
  int view() const;
  QImage ghost() const { return ghost_; }
  QString ghostWords() const { return ghost_.isNull() ? QString() : ghost_words_; }
  bool live() const;
  QString troubleWhat() const;
  QString troubleKept() const;
  bool canRestart() const;
  QString noticeWhat() const { return notice_ ? notice_->what : QString(); }
  QString noticeTodo() const { return notice_ ? notice_->todo : QString(); }
  QImage preview() const { return preview_; }
  QString judgedWord() const;
  QString judgedAdvice() const;
  bool judgedGood() const { return judged_ && judged_->good(); }
  QAbstractItemModel* measures() { return &measures_; }
  QAbstractItemModel* edgeKinds() { return &edge_kinds_; }
  bool several() const { return several_; }
  void setSeveral(bool several);
  Main mainAct() const;
  QString mainText() const;
  QString mainSecond() const;
  int offerCount() const;
  QString offerWords() const;
  bool watching() const { return !folder_.folder().isEmpty(); }
  QString watchWords() const;
  PictureIntake* intake() const { return &intake_; }

  // A shot of a stage ("": a picture without a shot). No stage: the next that is missing.
  Q_INVOKABLE void open(const QString& stage, const QString& key);
  Q_INVOKABLE void openForMark(const QString& mark);  // a picture of this mark
  Q_INVOKABLE void act();                             // what mainText says
  Q_INVOKABLE void keepAnyway();
  Q_INVOKABLE void drop();  // the picture that waits is not wanted
  Q_INVOKABLE void restart();
  Q_INVOKABLE void skip();          // the next missing shot, this one stays missing
  Q_INVOKABLE void find(int kind);  // a row of edgeKinds
  Q_INVOKABLE void offer(const QList<QUrl>& files);
  Q_INVOKABLE void keepAllOffered();  // for the shot that is shown, in the background
  Q_INVOKABLE void watch(const QUrl& folder);
  Q_INVOKABLE void stopWatching();
  Q_INVOKABLE void offerAll();  // also those that the watched folder held before

 signals:
  void changed();
  void ghostChanged();
  void filesAsked();
  void finished();  // nothing is missing any more

 private:
  struct Target {
    JobId job;
    entries::PicturePlace place;
    QString key;
    QString title;
    QString stand;
    int view = -1;
    bool asks_edges = false;
  };
  struct Offer {
    QString path;
    job::PictureFrom from{};
  };

  const Target& shown() const { return waiting_ && step_ != Step::Offered ? *waiting_ : target_; }
  bool writable() const;
  void refresh();
  void aim_at(const folds::WantedShot& wanted);
  void aim_free(entries::PicturePlace place, const QString& title);
  void show_ghost();
  void show_measures();
  void show_edge_kinds();
  void take();
  void judged(Result<Judged> answer);
  void keep_judged();
  void kept(const engine::Wrote& wrote);
  void let_go();  // nothing waits any more
  void tell(const Error& error);
  void advance();
  bool aim_next();
  void next_offer();
  void begin_edges(const PictureId& picture);
  void check_edges(const std::vector<job::DefectKind>& finds);

  Session& session_;
  PictureIntake& intake_;
  device::Camera& camera_;
  device::PictureFolder folder_;
  RowList measures_;
  RowList edge_kinds_;
  Step step_ = Step::Aim;
  bool front_ = false;
  bool folder_gone_ = false;
  std::vector<folds::WantedShot> list_;  // of the target's stage
  Target target_;
  std::optional<Target> waiting_;  // of the picture that is looked at, kept or asked about
  std::optional<Judged> judged_;
  std::optional<PictureId> looked_at_;  // whose edges are asked for
  std::set<job::DefectKind> finds_;
  bool several_ = false;
  QImage preview_;
  QImage ghost_;
  Hash ghost_file_;
  QString ghost_words_;
  std::optional<ErrorWords> notice_;
  std::deque<Offer> offers_;
};

}  // namespace jambline::screens
